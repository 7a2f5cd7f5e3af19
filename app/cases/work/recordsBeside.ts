import type { TeamFile } from '@/lib/records/fold/teamFile'

/**
 * How many records there are that say nothing of one case. The log only grows, so as long as this number stays, what
 * the other cases teach stays too, however much is tapped on this one.
 */
export function recordsBeside(file: TeamFile, caseId: string): number {
  const isOfCase = (id: unknown): boolean =>
    typeof id === 'string' && (id === caseId || file.records.get(id)?.entry.body.caseId === caseId)
  let beside = 0
  for (const { kind, entry } of file.records.values()) {
    const about = kind === 'withdrawal' ? entry.body.record : entry.body.caseId
    if (!isOfCase(about)) beside += 1
  }
  return beside
}
