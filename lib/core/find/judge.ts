import { type Forms, type Lie, lay } from './lay'
import { fitsPattern, isPattern, printedCharacters } from './wildcardPattern'

/** Judges texts against one typed piece. */
export type Judge = {
  /** 0 is the text itself, 1 nothing in common; undefined when there is too little in common to mean it. */
  score: (text: Forms) => number | undefined
  /** The folded characters of a text with a score that agree with the piece, ascending. */
  places: (text: Forms) => number[]
}

// The order is by kind first: each kind has its own stretch of scores, up to where the next begins.
const exact = 0
const exactButForLookAlikes = 0.01
const fitsFrom = 0.02
const fitsButForLookAlikesFrom = 0.06
const holdsFrom = 0.1
const nearFrom = 0.3
const worst = 1

const tooMuch = Number.POSITIVE_INFINITY

// What weighs how much beside one slip: common practice, no published source.
const leftOverWeight = 0.3
const beginsInTheMiddleWeight = 0.5
const lookAlikeWeight = 0.1

/** How many slips a typed piece may have: a third of its length and a half, none in one or two characters. */
export const slipsAllowed = (length: number): number => (length < 3 ? 0 : length / 3 + 0.5)

/**
 * The judge of one typed piece. First comes the text itself; then itself but for look-alikes; a pattern that stands
 * for it, the more printed the better; a text that holds it, the less left over the better; a text that holds it
 * with slips, no more than `slipsAllowed`.
 *
 *   judge({ folded: 'KZ90', alike: 'K290' }).score({ folded: 'KZ904', alike: 'K2904' })  // 0.114
 */
export function judge(piece: Forms): Judge {
  const length = piece.folded.length
  const layPiece = lay(piece)
  const within = (from: number, to: number, amount: number) =>
    from + ((to - from) * amount) / (amount + length)
  const fits = (text: Forms) => isPattern(text.folded) && fitsPattern(text.alike, piece.alike)

  const nearest = (text: Forms): Lie & { amount: number } => {
    const free = layPiece(text, 'free')
    const freeAmount =
      free.slips <= slipsAllowed(length) ? free.slips + leftOverWeight * free.leftOver : tooMuch
    if (!isPattern(text.folded)) return { ...free, amount: freeAmount }
    const printed = printedCharacters(text.folded)
    const whole = layPiece(text, 'whole')
    const left = leftOverWeight * Math.max(0, length - printed)
    const wholeAmount = whole.slips <= slipsAllowed(Math.min(length, printed)) ? whole.slips + left : tooMuch
    return wholeAmount < freeAmount ? { ...whole, amount: wholeAmount } : { ...free, amount: freeAmount }
  }

  const score = (text: Forms): number | undefined => {
    if (text.alike === piece.alike) return text.folded === piece.folded ? exact : exactButForLookAlikes
    if (fits(text)) {
      const left = Math.max(0, length - printedCharacters(text.folded))
      if (fitsPattern(text.folded, piece.folded)) return within(fitsFrom, fitsButForLookAlikesFrom, left)
      return within(fitsButForLookAlikesFrom, holdsFrom, left)
    }
    const start = text.alike.indexOf(piece.alike)
    if (start >= 0) {
      const left = leftOverWeight * (text.folded.length - length) + (start > 0 ? beginsInTheMiddleWeight : 0)
      return within(
        holdsFrom,
        nearFrom,
        left + lookAlikeWeight * differences(piece.folded, text.folded, start),
      )
    }
    const { amount } = nearest(text)
    return amount === tooMuch ? undefined : within(nearFrom, worst, amount)
  }

  const places = (text: Forms): number[] => {
    if (text.alike === piece.alike || fits(text)) return stretch(0, text.folded.length)
    const start = text.alike.indexOf(piece.alike)
    return start >= 0 ? stretch(start, length) : nearest(text).taken
  }
  return { score, places }
}

const stretch = (from: number, count: number) => Array.from({ length: count }, (_, at) => from + at)

function differences(piece: string, text: string, start: number): number {
  let count = 0
  for (let at = 0; at < piece.length; at++) if (piece[at] !== text[start + at]) count++
  return count
}
