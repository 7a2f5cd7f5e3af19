import type { ReadingSituation } from '@/lib/catalogue/fromReadings/situations'
import type { Expected, Reading } from '@/lib/core/reading'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { ofFurnace } from '../ofFurnace'

/** What has to be the same for a baseline to say what to expect of a reading. */
type Likeness = Pick<Reading, 'phase' | 'stage' | 'between' | 'tap' | 'sense'> & {
  /** Left out: as in service. */
  situation?: ReadingSituation
}

/** Nothing was changed for these, so one says what to expect of the other. */
export const inServiceSituations: readonly ReadingSituation[] = ['as found', 'calm', 'in gusts']

const sameSituation = (one: ReadingSituation = 'as found', other: ReadingSituation = 'as found'): boolean =>
  one === other || (inServiceSituations.includes(one) && inServiceSituations.includes(other))

const alike = (one: Likeness, other: Likeness): boolean =>
  (['phase', 'stage', 'between', 'tap', 'sense'] as const).every((field) => one[field] === other[field]) &&
  sameSituation(one.situation, other.situation)

/**
 * What this furnace showed when it was healthy, in the same phase, stage and situation and between the same points:
 * the mean of each baseline reading, in pascals. Undefined when no baseline is on file; then nothing is judged too
 * high.
 * @param until only baselines on record by this moment (ISO 8601, UTC) count; left out: all of them
 */
export function expectedAt(
  file: TeamFile,
  furnaceId: string,
  like: Likeness,
  until?: string,
): Extract<Expected, { kind: 'baselines' }> | undefined {
  const pascals = ofFurnace(file, file.baselines, furnaceId)
    .filter(({ at }) => until === undefined || at <= until)
    .map(({ body }) => file.readings.get(body.readingId))
    .filter((reading) => reading !== undefined && reading.withdrawn === undefined)
    .map((reading) => reading!.body)
    .filter((reading) => alike(reading, like))
    .map(meanOf)
  return pascals.length === 0 ? undefined : { kind: 'baselines', pascals }
}

const meanOf = ({ samples }: ReadingBody): number =>
  samples.reduce((sum, sample) => sum + sample, 0) / samples.length
