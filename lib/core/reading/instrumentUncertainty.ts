import type { Instrument } from './types'

/**
 * U, the half-width in pascals of a manometer's accuracy at one reading, by the form its maker prints: per cent of
 * the reading, counts of the last digit, per cent of span; added up ('plus') or the greatest of them ('greater').
 * Resolution is no accuracy: where nothing else is known, half a digit is taken and `assumed` says so.
 * @param readingPascals magnitude, zero or more
 * @throws RangeError if a figure is negative or not finite
 * @example ±1 % + 2 digits of 0.001 in. w.c. at 0.80 in. w.c.: 0.008 + 0.002 = 0.010 in. w.c.
 */
export function gaugeHalfWidth(
  instrument: Instrument,
  readingPascals: number,
): { pascals: number; assumed: boolean } {
  const { percentOfReading, counts, percentOfSpan, spanPascals, resolutionPascals } = instrument
  for (const part of [percentOfReading, counts, percentOfSpan])
    if (part !== undefined && !(part >= 0 && part < Number.POSITIVE_INFINITY))
      throw new RangeError(`gaugeHalfWidth requires an accuracy of zero or more, not ${part}`)
  const parts = [
    percentOfReading === undefined ? undefined : (percentOfReading / 100) * readingPascals,
    counts === undefined ? undefined : counts * resolutionPascals,
    percentOfSpan === undefined ? undefined : (percentOfSpan / 100) * spanPascals,
  ].filter((part) => part !== undefined)
  if (parts.length === 0) return { pascals: resolutionPascals / 2, assumed: true }
  const pascals =
    instrument.combine === 'plus' ? parts.reduce((sum, part) => sum + part, 0) : Math.max(...parts)
  return { pascals, assumed: false }
}
