import type { Forms } from './lay'
import { foldLookAlikes } from './lookAlikes'
import { fold } from './normalise'
import { printedCharacters } from './wildcardPattern'

/** What is typed beyond this many characters is not read. */
export const longestTyped = 200

/** Words beyond this many are read only as part of the whole. */
const mostWords = 8
/** Up to so many words, every run of neighbours is also read as one: a number typed with blanks beside other words. */
const mostWordsJoined = 4

/** A run of typed words, from the one numbered `from` up to, not including, `to`, read without the blanks. */
export type Piece = Forms & { from: number; to: number }

/**
 * The pieces of what was typed: the whole first, then words and runs of words in the order in which they end. `words`
 * is how many words the pieces are numbered by; 0 when there is no letter or digit.
 *
 *   readTyped('Wexhollow 471 R')  // words 3, pieces WEXHOLLOW471R, WEXHOLLOW, WEXHOLLOW471, 471, 471R, R
 */
export function readTyped(typed: string): { words: number; pieces: Piece[] } {
  const read = typed.slice(0, longestTyped)
  const words = read
    .split(/\s+/u)
    .map(fold)
    .filter((word) => printedCharacters(word) > 0)
    .slice(0, mostWords)
  if (words.length === 0) return { words: 0, pieces: [] }

  const pieces = [pieceOf(fold(read), 0, words.length)]
  for (let to = 1; words.length > 1 && to <= words.length; to++) {
    const longestRun = words.length <= mostWordsJoined ? to : 1
    for (let from = to - longestRun; from < to; from++) {
      if (to - from < words.length) pieces.push(pieceOf(words.slice(from, to).join(''), from, to))
    }
  }
  return { words: words.length, pieces }
}

function pieceOf(text: string, from: number, to: number): Piece {
  // One character can fold to several, so what was cut before may be too long again.
  const folded = text.slice(0, longestTyped)
  return { from, to, folded, alike: foldLookAlikes(folded) }
}
