import type { Comparison, Reading } from '@/lib/core/reading'
import type { ReadingSituation } from './situations'

/** How the display moved while it was watched, in words for the screen. */
export const movements = [
  'still',
  'a beat of one to three seconds',
  'with the gusts',
  'a quick shake',
  'without a pattern',
] as const
export type Movement = (typeof movements)[number]

/** One reading of a case, with what was done to the furnace and what it was found to mean. */
export type CaseReading = {
  /** When it was taken, ISO 8601. */
  at: string
  reading: Reading
  situation: ReadingSituation
  /** Zeroed with both ports open to the room before it. Without that nothing is said of zero or near it. */
  zeroed: boolean
  /** compareReading's answer. Without one nothing is judged against a limit. */
  comparison?: Comparison
  movement?: Movement
  /** What a healthy furnace shows here, pascals: its own baseline, or a maker's figure for one port to the room. */
  expectedPascals?: number
}
