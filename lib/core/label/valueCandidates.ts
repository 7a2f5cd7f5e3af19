import { type PressureText, readRatingText } from '../pressure'
import { confidenceLimit } from './confidenceLimit'
import { doubtsAbout } from './doubtsAbout'
import { lookAlikeDigits } from './lookAlikeDigits'
import { mended, mendings } from './mended'
import type { LabelLine, ValueCandidate } from './types'

/** A stretch of the label that reads as a rating, or that would if a number of it were clear. */
type Rating = {
  lines: readonly LabelLine[]
  text: string
  pressures: readonly PressureText[]
  /** Why no pressure could be read. */
  problem?: string
}

/** Lines of a label that belong to one rating: a value, its other action, its tolerance and its unit. */
const mostLines = 3

const textOf = (lines: readonly LabelLine[]): string =>
  lines.map((line) => line.map((_, at) => mended(line, at)).join(' ')).join(' / ')

/** A number of a label is a rating when something says so: a unit of pressure, or what the switch does there. */
const saysSo = (pressures: readonly PressureText[]): boolean =>
  pressures.every(({ unitStated, action }) => unitStated || action !== undefined)

/** Words that a rating may have on a line without a number: what it does, which limit it is, its tolerance and unit. */
const ratingWord =
  /^(?:clos(?:es?|ing)|open(?:s|ing)?|makes?|breaks?|set|setpoint|points?|at|max|min|nom|[±+-][±+\-/\d.,]*\d|in\.?|w\.?c\.?|w\.?g\.?|inwc|h2o|pa|mbar|")[.:]*$/i
const unitWord = /(?:^|\d)(?:"|in\.?|w\.?c\.?|inwc|h2o|pa|mbar)[.:]*$/i

/** Whether a line can be one of several that make one rating together. */
function isOfRating(line: LabelLine): boolean {
  if (line.length > 0 && line.every(({ text }) => ratingWord.test(text))) return true
  const read = readRatingText(textOf([line]))
  return read.ok && read.value.every(({ decimals, unitStated }) => decimals > 0 || unitStated)
}

function ratingIn(lines: readonly LabelLine[]): Rating | undefined {
  if (lines.length > 1 && !lines.every(isOfRating)) return undefined
  const text = textOf(lines)
  const read = readRatingText(text)
  if (read.ok) return saysSo(read.value) ? { lines, text, pressures: read.value } : undefined
  // A number with a unit that can't be read is not passed over: it may be the rating without its decimal point.
  const unclear =
    read.problem.code === 'number-unclear' && lines.flat().some((word) => unitWord.test(word.text))
  return unclear ? { lines, text, pressures: [], problem: read.problem.message } : undefined
}

/**
 * The ratings that a label states, each with why and with what speaks against it, the surest first. Lines that make
 * sense together are read together, because a label may print CLOSE and OPEN, or a number and its unit, one below the
 * other.
 */
export function valueCandidates(lines: readonly LabelLine[]): ValueCandidate[] {
  const found: Rating[] = []
  for (let at = 0; at < lines.length; ) {
    const { rating, count } = longestRating(lines, at)
    if (rating !== undefined) found.push(rating)
    at += count
  }
  return found
    .map(judged)
    .sort((one, other) => Number(other.offered) - Number(one.offered) || other.confidence - one.confidence)
}

/** The rating that begins on a line and says most, on the fewest lines; and how many lines that is. */
function longestRating(lines: readonly LabelLine[], at: number): { rating?: Rating; count: number } {
  let best: { rating?: Rating; count: number } = { count: 1 }
  for (let count = 1; count <= mostLines && at + count <= lines.length; count++) {
    const rating = ratingIn(lines.slice(at, at + count))
    if (rating !== undefined && saysMore(rating, best.rating)) best = { rating, count }
  }
  return best
}

const stated = (pressures: readonly PressureText[]): number =>
  pressures.reduce(
    (sum, { unitStated, action, toleranceAbove }) =>
      sum + 4 + Number(unitStated) + Number(action !== undefined) + Number(toleranceAbove !== undefined),
    0,
  )

const saysMore = (one: Rating, other: Rating | undefined): boolean =>
  other === undefined || stated(one.pressures) > stated(other.pressures)

function judged({ lines, text, pressures, problem }: Rating): ValueCandidate {
  const numbers = lines.flat().filter((word) => /\d/.test(lookAlikeDigits(word.text)))
  const confidence = Math.min(...numbers.map((word) => word.confidence))
  const doubts = problem === undefined ? [...new Set(pressures.flatMap(doubtsAbout))] : [problem]
  const unsure = confidence < confidenceLimit
  return {
    text,
    confidence,
    pressures,
    offered: doubts.length === 0 && !unsure,
    why: [
      pressures.every(({ unitStated }) => unitStated)
        ? 'A number with a unit of pressure.'
        : 'A number beside a word that says when the switch closes or opens.',
      ...mendings(lines).map(([read, taken]) => `“${read}” was taken for ${taken}.`),
      ...doubts,
      ...(unsure ? ['The picture is hard to read here.'] : []),
    ],
  }
}
