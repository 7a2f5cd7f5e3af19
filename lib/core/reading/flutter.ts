import { atLeast } from './decide'
import { closesWhen, isHot } from './phases'
import type { Limit, Reading, ReadingSettings, Steadiness } from './types'

/** How a reading moved, pascals. */
type Movement = { lowest: number; highest: number; flutter: boolean; steady: Steadiness }

/**
 * Whether a reading flutters: its samples lie on both sides of a limit, or more than the flutter half-spread to
 * either side of their middle. Steady is one that does not, watched for long enough.
 * @param limits the limits that it was judged against
 * @example 0.68 and 0.72 in. w.c. around a make point of 0.70: flutter
 */
export function movementOf(
  reading: Reading,
  limits: readonly Limit[],
  settings: Pick<ReadingSettings, 'flutterHalfSpreadPascals' | 'steadySeconds'>,
): Movement {
  const lowest = Math.min(...reading.samples, reading.lowest ?? Number.POSITIVE_INFINITY)
  const highest = Math.max(...reading.samples, reading.highest ?? 0)
  const straddles = limits.some((limit) => lowest < limit.pascals && limit.pascals < highest)
  const flutter = straddles || !atLeast(settings.flutterHalfSpreadPascals, (highest - lowest) / 2)
  const watched = (reading.secondsWatched ?? 0) >= settings.steadySeconds
  return {
    lowest,
    highest,
    flutter,
    steady: flutter ? 'fluttering' : watched ? 'steady' : 'not watched long enough',
  }
}

/** Whether the extreme that endangers the contact was held by the gauge and not averaged away. */
export const extremeHeld = (reading: Reading): boolean =>
  !isHot(reading.phase) ||
  (closesWhen(reading.kind) === 'enough' ? reading.lowest !== undefined : reading.highest !== undefined)
