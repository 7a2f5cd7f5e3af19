import Fuse from 'fuse.js'
import type { FindIndex } from './buildFindIndex'
import { slipsAllowed } from './judge'

/** How many candidates fuse.js is given, and how many of those that it ranks first are looked at more closely. */
const mostCandidates = 300
const shortlist = 100

/** A swap disturbs three pairs of neighbours, any other slip two. */
const pairsPerSlip = 2
const pairsPerTwoSwaps = 6

/** fuse.js on folded texts: characters count wherever they stand in the text, and however many words it has. */
export const fuseOptions = (length: number) => ({
  ignoreLocation: true,
  ignoreFieldNorm: true,
  isCaseSensitive: true,
  // The share of wrong characters let through. fuse.js counts a swap as two, so short words need more room.
  threshold: length <= 5 ? 0.5 : 0.4,
})

/**
 * The texts nearest a typed piece, slips allowed, in the order in which fuse.js ranks them. It is given only the
 * candidates that share the most pairs of neighbouring characters with the piece; a wildcard counts there as one
 * wrong character. `without` holds texts that are known already. For each text in the list this clears a byte and
 * reads it; all else grows with the texts that share a pair.
 */
export function nearTexts(
  index: FindIndex,
  alike: string,
  bigrams: readonly number[],
  without: ReadonlyMap<number, unknown>,
): number[] {
  // A piece with so many slips as are allowed, or with two swaps, still shares this many.
  const leastShared = Math.min(
    bigrams.length - pairsPerSlip * Math.floor(slipsAllowed(alike.length)) - 1,
    bigrams.length - pairsPerTwoSwaps,
  )
  const shared = countShared(index, bigrams)
  for (const text of without.keys()) shared[text] = 0
  const candidates = theMost(shared, Math.max(1, leastShared))

  const forms = candidates.map((text) => index.alike[text]!)
  const ranked = new Fuse(forms, fuseOptions(alike.length)).search(alike, { limit: shortlist })
  return ranked.map(({ refIndex }) => candidates[refIndex]!)
}

/** Per text: how many of the bigrams it has. A typed piece has at most 201 bigrams, so a byte can count them. */
function countShared(
  { texts, textsWith: { starts, values } }: FindIndex,
  bigrams: readonly number[],
): Uint8Array {
  const shared = new Uint8Array(texts.length)
  for (const bigram of bigrams) {
    const end = starts[bigram + 1]!
    for (let at = starts[bigram]!; at < end; at++) shared[values[at]!]!++
  }
  return shared
}

/** The numbers of the `mostCandidates` greatest counts of at least `least`, ascending; of equal counts the first. */
function theMost(counts: Uint8Array, least: number): number[] {
  const having = new Uint32Array(256)
  for (let number = 0; number < counts.length; number++) having[counts[number]!]!++
  let sure = 255
  let room = mostCandidates
  while (sure >= least && having[sure]! <= room) room -= having[sure--]!

  const chosen: number[] = []
  for (let number = 0; number < counts.length; number++) {
    const count = counts[number]!
    if (count > sure || (count === sure && count >= least && room-- > 0)) chosen.push(number)
  }
  return chosen
}
