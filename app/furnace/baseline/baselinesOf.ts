import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { BaselineBody } from '@/lib/records/kinds/baseline'
import type { ReadingBody } from '@/lib/records/kinds/reading'

/** A baseline with the reading that it is said of. */
export type BaselineLine = { baseline: Entry<BaselineBody>; reading: Entry<ReadingBody> }

/** The baselines of a furnace that count, the newest first. One whose reading was withdrawn says nothing any more. */
export function baselinesOf(file: TeamFile, furnaceId: string): BaselineLine[] {
  return counting(file.baselines)
    .filter(({ body }) => file.keptId(body.furnaceId) === file.keptId(furnaceId))
    .flatMap((baseline) => {
      const reading = file.readings.get(baseline.body.readingId)
      return reading === undefined || reading.withdrawn !== undefined ? [] : [{ baseline, reading }]
    })
    .sort(newestFirst)
}

const newestFirst = ({ baseline: one }: BaselineLine, { baseline: other }: BaselineLine): number =>
  one.body.on === other.body.on ? (one.at < other.at ? 1 : -1) : one.body.on < other.body.on ? 1 : -1

/** What a baseline says to expect, in pascals: the mean of its samples. */
export const baselinePascals = ({ reading }: BaselineLine): number =>
  reading.body.samples.reduce((sum, sample) => sum + sample, 0) / reading.body.samples.length
