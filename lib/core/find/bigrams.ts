import { wildcard } from './normalise'

/** How many different bigram numbers there are: 64 × 64. */
export const bigramCount = 4096

/** The class of the beginning and of the end of a text. */
export const boundary = 0

/** Digits are 1 to 10, the letters A to Z 11 to 36, and everything else shares 37 to 63. */
export function characterClass(unit: number): number {
  if (unit >= 48 && unit <= 57) return unit - 47
  if (unit >= 65 && unit <= 90) return unit - 54
  return 37 + (unit % 27)
}

export const bigramNumber = (before: number, here: number): number => before * 64 + here

/**
 * The different pairs of neighbouring characters in a folded text, its beginning and its end counted as neighbours
 * too, as numbers below `bigramCount`. A wildcard breaks the row: no pair spans it, and a pattern that begins or
 * ends with one has no pair there. Two texts may share a number by accident (characters outside A to Z and 0 to 9
 * share theirs), which costs a candidate too many and never loses one.
 *
 *   bigramsOf('AB')  // three of them: beginning-A, A-B, B-end
 */
export function bigramsOf(folded: string): number[] {
  const found: number[] = []
  if (folded === '') return found
  let before = boundary
  let broken = false
  for (let at = 0; at <= folded.length; at++) {
    const open = folded[at] === wildcard
    const here = at === folded.length ? boundary : characterClass(folded.charCodeAt(at))
    if (!broken && !open) {
      const bigram = bigramNumber(before, here)
      if (!found.includes(bigram)) found.push(bigram)
    }
    before = here
    broken = open
  }
  return found
}
