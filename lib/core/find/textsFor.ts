import { bigramNumber, bigramsOf, boundary, characterClass } from './bigrams'
import { type FindIndex, formsOf, rarestOf } from './buildFindIndex'
import { type Judge, judge } from './judge'
import { nearTexts } from './nearTexts'
import { eachIn } from './postings'
import type { Piece } from './readTyped'
import { fitsPattern } from './wildcardPattern'

/** A typed piece, its judge, and the texts that agree with it, with their scores. */
export type Agreement = { piece: Piece; judge: Judge; scores: ReadonlyMap<number, number> }

/** Of a word typed beside others, so many texts will do before slips are looked for. */
const enoughForWord = 20

/**
 * The texts that agree with a typed piece: those that read the same, those that stand for it, those that hold it and,
 * where these are too few, those that hold it with slips. None of the last could come before the others, so for a
 * piece typed alone texts of `limit` entries are enough. In a run of some of the words no slips are looked for: its
 * words are pieces themselves. The work grows with the number of texts that share the piece's rarest pair of
 * characters.
 */
export function textsFor(index: FindIndex, piece: Piece, words: number, limit: number): Agreement {
  const pieceJudge = judge(piece)
  const scores = new Map<number, number>()
  const consider = (text: number) => {
    const score = scores.has(text) ? undefined : pieceJudge.score(formsOf(index, text))
    if (score !== undefined) scores.set(text, score)
  }

  const reading = index.textsReading.get(piece.alike) ?? []
  reading.forEach(consider)
  const bigrams = bigramsOf(piece.alike)
  const considerPattern = (text: number) => {
    if (fitsPattern(index.alike[text]!, piece.alike)) consider(text)
  }
  for (const bigram of bigrams) eachIn(index.patternsUnder, bigram, considerPattern)
  const considerHolder = (text: number) => {
    if (index.alike[text]!.includes(piece.alike)) consider(text)
  }
  for (const bigram of waysIn(index, piece.alike)) eachIn(index.textsWith, bigram, considerHolder)

  const run = piece.to - piece.from
  const enough =
    words === 1
      ? reachesEntries(index, scores.keys(), limit)
      : run < words && (run > 1 || reading.length > 0 || scores.size >= enoughForWord)
  if (!enough) nearTexts(index, piece.alike, bigrams, scores).forEach(consider)
  return { piece, judge: pieceJudge, scores }
}

/**
 * The bigrams whose texts include every text that holds a piece: its rarest inner one. A single character has none;
 * it is looked for at the beginning and end of texts only.
 */
function waysIn(index: FindIndex, alike: string): number[] {
  if (alike.length === 1) {
    const only = characterClass(alike.charCodeAt(0))
    return [bigramNumber(boundary, only), bigramNumber(only, boundary)]
  }
  const inner = bigramsOf(alike).filter(
    (bigram) => Math.floor(bigram / 64) !== boundary && bigram % 64 !== boundary,
  )
  const rarest = rarestOf(inner, index.textsWith)
  return rarest === undefined ? [] : [rarest]
}

function reachesEntries({ entriesWith }: FindIndex, texts: Iterable<number>, count: number): boolean {
  const reached = new Set<number>()
  for (const text of texts) {
    for (let at = entriesWith.starts[text]!; at < entriesWith.starts[text + 1]!; at++) {
      if (reached.add(entriesWith.values[at]!).size >= count) return true
    }
  }
  return false
}
