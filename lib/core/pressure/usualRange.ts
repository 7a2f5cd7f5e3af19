import { toPascals } from './units'

/**
 * Where air pressure switches of residential furnaces are usually set: 0.10 to 3.0 in. w.c. (common practice, no
 * published source). Outside it a slip is likelier than a setting; nothing is refused.
 */
export const usualRatingRange = {
  lowPascals: toPascals(0.1, 'inH2O'),
  highPascals: toPascals(3, 'inH2O'),
} as const

/** A rating outside 5 to 2500 Pa is kept as written, but asks to be confirmed (common practice). */
export const confirmRatingRange = { lowPascals: 5, highPascals: 2500 } as const

/**
 * Whether a magnitude lies in a range, both ends included. The slack of 1e-9 keeps a bound that went through
 * another unit on its own side.
 */
export function isWithin(range: { lowPascals: number; highPascals: number }, pascals: number): boolean {
  return pascals >= range.lowPascals * (1 - 1e-9) && pascals <= range.highPascals * (1 + 1e-9)
}

/**
 * Whether a rating's magnitude lies where such switches are usually set, both ends included.
 * @throws RangeError if the magnitude is negative or not finite
 * @example isUsualRating(149.5) // true
 */
export function isUsualRating(pascals: number): boolean {
  if (!Number.isFinite(pascals) || pascals < 0)
    throw new RangeError(`isUsualRating requires a finite magnitude, not ${pascals}`)
  return isWithin(usualRatingRange, pascals)
}
