import { wildcard } from './normalise'

/** How many characters of a folded text are printed, not left open by a wildcard. */
export const printedCharacters = (folded: string): number => folded.replaceAll(wildcard, '').length

/** A folded text that stands for several numbers. With fewer than two printed characters it would stand for any. */
export const isPattern = (folded: string): boolean =>
  folded.includes(wildcard) && printedCharacters(folded) >= 2

/**
 * Does a whole folded number fit a folded pattern in which each `*` stands for any run of characters, none
 * included? Takes the shortest run first and lengthens the last one when stuck: time at most the product of both
 * lengths.
 *
 *   fitsPattern('XY80*12', 'XY80A12')  // true
 */
export function fitsPattern(pattern: string, whole: string): boolean {
  let inPattern = 0
  let inWhole = 0
  let afterWildcard = -1
  let resumeAt = 0
  while (inWhole < whole.length) {
    if (pattern[inPattern] === wildcard) {
      afterWildcard = ++inPattern
      resumeAt = inWhole
    } else if (pattern[inPattern] === whole[inWhole]) {
      inPattern++
      inWhole++
    } else if (afterWildcard >= 0) {
      inPattern = afterWildcard
      inWhole = ++resumeAt
    } else {
      return false
    }
  }
  while (pattern[inPattern] === wildcard) inPattern++
  return inPattern === pattern.length
}
