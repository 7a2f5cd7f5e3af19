import { diagnosisCatalogue } from '@/lib/catalogue/diagnosisCatalogue'
import { type HelperRecord, type ReplayCase, replayHelperInSteps } from '@/lib/core/diagnosis'
import type { Result } from '@/lib/core/result'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { replayCaseOf } from '@/lib/records/view/case/pastCases'

/** How far the work is: every case is gathered once and replayed once. */
export type Progress = { through: number; of: number }

/** The helper's record, and what it was worked out of. */
export type Worked = {
  record: Result<HelperRecord>
  /** Cases on this device, with and without a cause. */
  onFile: number
  /** Those whose cause is known by a proven repair. */
  proven: number
}

/** Replays the helper against every case on the device, in steps: see workInSlices. */
export function* helperSteps(file: TeamFile): Generator<Progress, Worked> {
  const ids = counting(file.cases).map(({ id }) => id)
  const of = 2 * ids.length
  const cases: ReplayCase[] = []
  for (const [through, id] of ids.entries()) {
    yield { through, of }
    const one = replayCaseOf(file, id)
    if (one !== undefined) cases.push(one)
  }
  const replay = replayHelperInSteps({ catalogue: diagnosisCatalogue, cases })
  for (;;) {
    const step = replay.next()
    if (step.done) return { record: step.value, onFile: ids.length, proven: cases.filter(isProven).length }
    yield { through: ids.length + step.value.through, of }
  }
}

function isProven({ causes }: ReplayCase): boolean {
  const says = causes.at(-1)?.says
  return says !== undefined && says !== 'withdrawn' && says.status !== 'presumed'
}
