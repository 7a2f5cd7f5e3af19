import { buildFindIndex, find, plainSpelling } from '../find'
import { confidenceLimit } from './confidenceLimit'
import type { LabelLine, LabelWord, PartCandidate } from './types'

/** What stands before the number of a part. */
const partWord = /^(?:P\/?N|PART|PT|CAT|ITEM|KIT)[.:#]*$/i
/** What may stand between that and the number. */
const filler = /^(?:NO|NR|NUMBER|NUM|#)[.:#]*$/i
/** The same glued to the number. */
const gluedPartWord = /^(?:P\/N|PN|P\/NO)[.:#]?(?=[A-Z0-9])/i
/** What begins something else: the number ends before it, and what follows is no part's number. */
const otherWord =
  /^(?:S\/?N|SER(?:IAL)?|DATE|REV|LOT|MOD(?:EL)?|M\/?N|TYPE|TESTED|MFG|PF|PR|CLOSES?|OPENS?|MAKE|BREAK|NO|NC|MAX|MIN|SET)[.:#]*$/i
/** Numbers with another meaning: voltages, currents, frequencies, temperatures, decimals, days. */
const otherNumber =
  /^(?:[\d.,/-]+(?:V|VAC|VDC|A|AMP|MA|HZ|W|VA|°?[CF]|PA|MBAR)|[-+±]?\d*[.,]\d{1,3}|\d{1,4}[./-]\d{1,2}[./-]\d{1,4})$/i

const looksLikeNumber = (text: string): boolean => text.length >= 4 && (text.match(/\d/g)?.length ?? 0) >= 2

type Found = { text: string; words: readonly LabelWord[]; named: boolean }

/**
 * The numbers of a label that may be its part's: what stands behind words such as P/N, and whatever else is like a
 * part number, held against those on file. A number on file is never put in the place of what was read.
 * @param onFile the part numbers on file, as they are written there
 */
export function partCandidates(lines: readonly LabelLine[], onFile: readonly string[]): PartCandidate[] {
  const numbers = [...new Set(onFile)]
  const spellings = new Map<string, string[]>()
  for (const number of numbers) {
    const plain = plainSpelling(number)
    spellings.set(plain, [...(spellings.get(plain) ?? []), number])
  }
  const index = buildFindIndex(numbers.map((number) => ({ key: number, texts: [number] })))
  const found = lines.flatMap((line) => numbersIn(line, (text) => spellings.has(plainSpelling(text))))
  const judged = found.map(({ text, words, named }): PartCandidate => {
    const same = spellings.get(plainSpelling(text)) ?? []
    const near =
      same.length > 0
        ? []
        : find(index, text, nearListed)
            .filter(isNear(text))
            .map(({ key }) => key)
    const confidence = Math.min(...words.map((word) => word.confidence))
    const unsure = confidence < (same.length > 0 ? confidenceLimit - knownIsSurer : confidenceLimit)
    return {
      text,
      confidence,
      onFile: same,
      near,
      offered: !unsure && (named || same.length > 0),
      why: [
        named ? 'It stands behind the word for a part number.' : 'It is like a part number.',
        ...(same.length > 0 ? [`On file: ${same.join(', ')}.`] : ['Not on file as it was read.']),
        ...(near.length > 0 ? [`Near it on file: ${near.join(', ')}. A misreading, or another part.`] : []),
        ...(unsure ? ['The picture is hard to read here.'] : []),
      ],
    }
  })
  const best = new Map<string, PartCandidate>()
  for (const each of judged) {
    const before = best.get(each.text)
    if (before === undefined || before.confidence < each.confidence) best.set(each.text, each)
  }
  return [...best.values()].sort((one, other) => rank(other) - rank(one) || other.confidence - one.confidence)
}

/** A whole number of the file is seldom read by chance, so less confidence will do. */
const knownIsSurer = 20
const nearListed = 3

/** No more than a slip in six characters: else everything is near everything. */
const isNear =
  (text: string) =>
  ({ score }: { score: number }): boolean =>
    score < 0.3 + 0.7 / (1 + plainSpelling(text).length / 1.5)

const rank = ({ offered, onFile }: PartCandidate): number => (offered ? 2 : 0) + (onFile.length > 0 ? 1 : 0)

function numbersIn(line: LabelLine, isOnFile: (text: string) => boolean): Found[] {
  const named = namedNumber(line)
  if (named !== undefined) return [named]
  const ends = line.findIndex(({ text }) => otherWord.test(text))
  const words = ends < 0 ? line : line.slice(0, ends)
  // Printed with a blank in it, as some are, and on file with it.
  const pairs = words.flatMap((word, at): Found[] => {
    const next = words[at + 1]
    const text = next === undefined ? '' : `${word.text} ${next.text}`
    return next !== undefined && isOnFile(text) ? [{ text, words: [word, next], named: false }] : []
  })
  if (pairs.length > 0) return pairs
  return words
    .filter(({ text }) => looksLikeNumber(text) && !otherNumber.test(text))
    .map((word) => ({ text: word.text, words: [word], named: false }))
}

/** The number behind P/N and its like, up to the next word of the label. */
function namedNumber(line: LabelLine): Found | undefined {
  const at = line.findIndex(({ text }) => partWord.test(text) || gluedPartWord.test(text))
  if (at < 0) return undefined
  const head = line[at]!
  const glued = head.text.replace(gluedPartWord, '')
  const rest =
    glued !== head.text && glued !== ''
      ? [{ ...head, text: glued }, ...line.slice(at + 1)]
      : line.slice(at + 1)
  const words = rest.slice(rest.findIndex(({ text }) => !filler.test(text)))
  const ends = words.findIndex(
    ({ text }, place) => place > 0 && (otherWord.test(text) || otherNumber.test(text) || !/\d/.test(text)),
  )
  const own = ends < 0 ? words : words.slice(0, ends)
  const text = own.map((word) => word.text).join(' ')
  return looksLikeNumber(text) ? { text, words: own, named: true } : undefined
}
