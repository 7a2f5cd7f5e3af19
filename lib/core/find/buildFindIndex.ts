import { bigramCount, bigramsOf } from './bigrams'
import type { Forms } from './lay'
import { foldLookAlikes } from './lookAlikes'
import { fold } from './normalise'
import { eachIn, layPostings, type Postings } from './postings'
import { isPattern } from './wildcardPattern'

/** One thing to be found by any of its texts: part numbers, old ones too, model numbers, maker, position. */
export type FindEntry = { key: string; texts: readonly string[] }

/**
 * What `find` looks into: made once for a list, never changed afterwards. Entries and texts are numbered; a text
 * that many entries share is held once.
 */
export type FindIndex = {
  /** The entries' keys in code-unit order; an entry's number is its place here. */
  keys: readonly string[]
  /** The different texts as given, folded, and folded with look-alikes made one. */
  texts: readonly string[]
  folded: readonly string[]
  alike: readonly string[]
  /** Entry → its texts, in the order given. */
  textsOf: Postings
  /** Text → the entries that have it. */
  entriesWith: Postings
  /** Bigram → the texts that have it. */
  textsWith: Postings
  /** Bigram → the patterns with wildcards for which it is the rarest of their bigrams. */
  patternsUnder: Postings
  /** Folded with look-alikes made one → the texts that read so. */
  textsReading: ReadonlyMap<string, readonly number[]>
}

export const formsOf = ({ folded, alike }: FindIndex, text: number): Forms => ({
  folded: folded[text]!,
  alike: alike[text]!,
})

/** Only so many folded characters of a text are read. A part or model number has ten or twenty. */
const longestText = 400

/**
 * Reads a list so that `find` need not go through it. Texts without a letter or digit are never found. Throws
 * RangeError when two entries have the same key. Takes time in proportion to the characters in the different texts.
 *
 *   buildFindIndex([{ key: 'a', texts: ['KEX-00471-R', 'Wexhollow', 'low fire'] }])
 */
export function buildFindIndex(entries: readonly FindEntry[]): FindIndex {
  const sorted = [...entries].sort((one, other) => (one.key < other.key ? -1 : one.key > other.key ? 1 : 0))
  sorted.forEach(({ key }, at) => {
    if (sorted[at + 1]?.key === key) throw new RangeError(`buildFindIndex: two entries have the key '${key}'`)
  })

  const { texts, textsOf } = numberTexts(sorted)
  const folded = texts.map((text) => fold(text.slice(0, 4 * longestText)).slice(0, longestText))
  const alike = folded.map(foldLookAlikes)
  const bigrams = alike.map(bigramsOf)
  const textsWith = layPostings(bigramCount, (report) => {
    bigrams.forEach((own, text) => {
      for (const bigram of own) report(bigram, text)
    })
  })

  return {
    keys: sorted.map(({ key }) => key),
    texts,
    folded,
    alike,
    textsOf,
    entriesWith: turnRound(textsOf, texts.length),
    textsWith,
    patternsUnder: layPostings(bigramCount, (report) => {
      alike.forEach((form, text) => {
        const rarest = isPattern(form) ? rarestOf(bigrams[text]!, textsWith) : undefined
        if (rarest !== undefined) report(rarest, text)
      })
    }),
    textsReading: groupByForm(alike),
  }
}

/** Gives each different text a number, in the order in which they first occur. */
function numberTexts(entries: readonly FindEntry[]): { texts: string[]; textsOf: Postings } {
  const numbers = new Map<string, number>()
  const starts = new Uint32Array(entries.length + 1)
  entries.forEach((entry, at) => {
    starts[at + 1] = starts[at]! + entry.texts.length
  })
  const values = new Uint32Array(starts[entries.length]!)
  let next = 0
  for (const entry of entries) {
    for (const text of entry.texts) {
      let number = numbers.get(text)
      if (number === undefined) {
        number = numbers.size
        numbers.set(text, number)
      }
      values[next++] = number
    }
  }
  return { texts: [...numbers.keys()], textsOf: { starts, values } }
}

const turnRound = (turned: Postings, rows: number): Postings =>
  layPostings(rows, (report) => {
    for (let row = 0; row + 1 < turned.starts.length; row++)
      eachIn(turned, row, (value) => report(value, row))
  })

/** The bigram that the fewest texts have; the first of equals, undefined for none. */
export function rarestOf(bigrams: readonly number[], { starts }: Postings): number | undefined {
  let rarest: number | undefined
  let fewest = Number.POSITIVE_INFINITY
  for (const bigram of bigrams) {
    const count = starts[bigram + 1]! - starts[bigram]!
    if (count < fewest) {
      fewest = count
      rarest = bigram
    }
  }
  return rarest
}

function groupByForm(forms: readonly string[]): Map<string, number[]> {
  const groups = new Map<string, number[]>()
  forms.forEach((form, text) => {
    const group = groups.get(form)
    if (group) group.push(text)
    else groups.set(form, [text])
  })
  return groups
}
