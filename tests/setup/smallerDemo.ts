import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'

/** How many cases a browser needs to be shown what a list of cases does, the 50 of its first page among them. */
const cases = 60

/**
 * The demo company with its newest cases only. Every browser of the tests is a new device and fetches the whole team
 * file, so four winters of cases would make them wait and show them nothing more.
 */
export function smallerDemo(records: readonly RecordEnvelope[]): RecordEnvelope[] {
  const newest = new Set(
    records
      .filter(({ kind }) => kind === 'case')
      .slice(-cases)
      .map(({ id }) => id),
  )
  const kept = new Set<string>()
  return records.filter(({ id, kind, body }) => {
    const ofCase = kind === 'case' ? id : body.caseId
    if (typeof ofCase === 'string' && !newest.has(ofCase)) return false
    if (!recordKinds[kind]!.refersTo(body).every((named) => kept.has(named))) return false
    kept.add(id)
    return true
  })
}
