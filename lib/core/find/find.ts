import { bestSplit, type Nearness } from './bestSplit'
import { type FindIndex, formsOf } from './buildFindIndex'
import { firstFew } from './firstFew'
import { matchedRanges } from './matchedRanges'
import { eachIn } from './postings'
import { readTyped } from './readTyped'
import { type Agreement, textsFor } from './textsFor'

/** One entry found. */
export type Match = {
  key: string
  /** 0 is the text itself, 1 nothing in common. Good for ordering, and below 0.02 for saying "this very number". */
  score: number
  /** Which of the entry's texts agrees most with what was typed. */
  text: number
  /** The stretches of that text that agree, `[start, end)` in UTF-16 units, ascending and apart. */
  matched: [start: number, end: number][]
}

type PieceFound = Agreement & Nearness

/**
 * Finds the entries of a list that agree best with what somebody typed, best first, at most `limit`; ties in the
 * order of their keys. First comes the text itself (case, dashes, blanks and accents apart), then the text but for
 * look-alikes (0/O, 1/I/L, 5/S, 8/B, 2/Z, 6/G), then patterns with wildcards that stand for it, then texts that hold
 * it, then texts near it: those that fuse.js ranks first, put in order by the slips that people make. Several words
 * may be spread over several texts of an entry. Typed text without a letter or digit finds nothing; past 200
 * characters it is cut. Throws RangeError when `limit` is not a whole number of at least 1.
 *
 *   find(buildFindIndex([{ key: 'a', texts: ['KEX-00471-R', 'Wexhollow'] }]), 'wexholow 471', 5)[0]?.key  // 'a'
 */
export function find(index: FindIndex, typed: string, limit: number): Match[] {
  if (!Number.isInteger(limit) || limit < 1) {
    throw new RangeError(`find: limit must be a whole number of at least 1, not ${limit}`)
  }
  const { words, pieces } = readTyped(typed)
  const found = pieces.map((piece): PieceFound => {
    const agreement = textsFor(index, piece, words, limit)
    return { ...agreement, byEntry: spread(index, agreement.scores) }
  })

  const split = bestSplit(found, words)
  const first = firstFew(limit)
  for (const entry of entriesTouched(index, found)) {
    const score = split.score(entry)
    if (score < 1) first.offer(entry, score)
  }
  return first.inOrder().map(({ number, score }) => {
    const best = bestText(index, number, split.pieces(number))
    return { key: index.keys[number]!, score, ...best }
  })
}

/** By entry: 1 less the score of the best of its texts, 0 for none. */
function spread(index: FindIndex, scores: ReadonlyMap<number, number>): Float32Array {
  const byEntry = new Float32Array(index.keys.length)
  for (const [text, score] of scores) {
    eachIn(index.entriesWith, text, (entry) => {
      if (byEntry[entry]! < 1 - score) byEntry[entry] = 1 - score
    })
  }
  return byEntry
}

/** The entries that any piece agrees with, each once. */
function entriesTouched(index: FindIndex, found: readonly PieceFound[]): number[] {
  const seen = new Uint8Array(index.keys.length)
  const touched: number[] = []
  for (const { scores } of found) {
    for (const text of scores.keys()) {
      eachIn(index.entriesWith, text, (entry) => {
        if (seen[entry] === 0) touched.push(entry)
        seen[entry] = 1
      })
    }
  }
  return touched
}

/** The text of an entry that accounts for most characters of the pieces, and where. */
function bestText(
  index: FindIndex,
  entry: number,
  pieces: readonly PieceFound[],
): Pick<Match, 'text' | 'matched'> {
  const texts = index.textsOf.values.subarray(index.textsOf.starts[entry]!, index.textsOf.starts[entry + 1]!)
  const placesIn = Array.from(texts, (): number[] => [])
  for (const { judge, scores } of pieces) {
    const scoreOf = (place: number) => scores.get(texts[place]!) ?? 1
    const best = [...texts.keys()].reduce((one, other) => (scoreOf(other) < scoreOf(one) ? other : one))
    if (scoreOf(best) < 1) placesIn[best]!.push(...judge.places(formsOf(index, texts[best]!)))
  }
  const text = placesIn.reduce(
    (one, places, other) => (places.length > placesIn[one]!.length ? other : one),
    0,
  )
  return { text, matched: matchedRanges(index.texts[texts[text]!]!, placesIn[text]!) }
}
