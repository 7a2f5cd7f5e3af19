import { findingsFromReadings } from '@/lib/catalogue/fromReadings'
import type { Observations } from '@/lib/core/diagnosis'
import type { Entry } from '@/lib/records/fold/entry'
import type { FindingBody } from '@/lib/records/kinds/finding'
import { type JudgedReading, readingOf } from './judgedReading'

/** The newest record of each finding, by its id. Older ones stay readable and no longer count. */
export const newestFindings = (findings: readonly Entry<FindingBody>[]): Map<string, Entry<FindingBody>> =>
  new Map(findings.map((entry) => [entry.body.finding, entry]))

/** What the furnace's own readings show, by finding id. Readings taken after a repair describe another furnace. */
export const observedInReadings = (judged: readonly JudgedReading[]): Observations =>
  findingsFromReadings(
    judged
      .filter(({ entry }) => entry.body.when === 'as found')
      .map(({ entry, comparison, expectedPascals }) => ({
        at: entry.at,
        reading: readingOf(entry.body),
        situation: entry.body.situation,
        zeroed: entry.body.zeroed,
        ...(entry.body.movement === undefined ? {} : { movement: entry.body.movement }),
        ...(expectedPascals === undefined ? {} : { expectedPascals }),
        ...(comparison.ok ? { comparison: comparison.value } : {}),
      })),
  )

/** Everything observed in a case, tapped and measured. What was tapped outweighs what a reading seems to say. */
export const observedIn = (
  findings: readonly Entry<FindingBody>[],
  judged: readonly JudgedReading[],
): Observations => ({
  ...observedInReadings(judged),
  ...Object.fromEntries([...newestFindings(findings)].map(([id, { body }]) => [id, body.value])),
})
