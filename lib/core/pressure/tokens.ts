import { labelWords } from './labelWords'
import { readFraction, readNumeral } from './numeral'
import { here, matchAt } from './patterns'
import type { Meaning, Token } from './token'
import { bareInches, foreignUnits, percent, unitPatterns } from './unitWords'

const plusOrMinus = here('±|∓|\\+ ?/ ?[-–]|[-–] ?/ ?\\+|\\+[-–]|[-–]\\+|plus ?(?:or|/|-) ?minus|\\+ or [-–]')
const fraction = here('(?:\\d{1,3}[ -])?\\d{1,2}/\\d{1,2}(?!\\d|[.,/-]\\d)')
const dashedDigits = here('\\d+(?:[-/]\\d+)+(?!\\d|[.,]\\d)')
const digits = here('[.,]*\\d(?:[.,]*\\d)*')
const exponent = here('e[-+]?\\d+')
const signs = here('[-–+](?: ?[-–+])*')
const letters = here('[\\p{L}\\p{M}]+')
const glued = here('[\\p{L}\\p{M}\\p{N}_]')
const dashedLetter = here('-\\p{L}')
const gluedNumber = here('[-_.,/]?[\\p{N}_]')
const gluedDecimal = here('[-/]\\d*\\.\\d')
const restOfCode = here('[.,]*[\\p{L}\\p{M}\\p{N}_./-]*')
const breaks = here('[/;|,\\n&]')

/** A word or a unit that begins at a place of the text. */
function knownAt(text: string, at: number, afterNumber: boolean): Token | undefined {
  const token = (pattern: RegExp, meaning: Meaning): Token | undefined => {
    const found = matchAt(pattern, text, at)
    return found === '' ? undefined : { ...meaning, text: found, start: at }
  }
  for (const [pattern, unit] of unitPatterns) {
    const found = token(pattern, { kind: 'unit', unit })
    if (found) return found
  }
  const other =
    token(bareInches, afterNumber ? { kind: 'unit', unit: 'inH2O' } : { kind: 'connector' }) ??
    token(percent, { kind: 'percent' }) ??
    token(foreignUnits, { kind: 'foreign unit' })
  if (other) return other
  for (const [pattern, meaning] of labelWords) {
    const found = token(pattern, meaning)
    if (found) return found
  }
  return undefined
}

/** A number, a date or a part number that begins with the digits at a place of the text. */
function numberAt(text: string, at: number): Token {
  const code = (): Token => ({ kind: 'code', text: matchAt(restOfCode, text, at), start: at })
  const finish = (found: string, meaning: Meaning): Token => {
    const end = at + found.length
    const goesOn =
      (matchAt(glued, text, end) !== '' && !knownAt(text, end, true)) ||
      (matchAt(dashedLetter, text, end) !== '' && !knownAt(text, end + 1, true))
    return goesOn ? code() : { ...meaning, text: found, start: at }
  }
  const ruler = matchAt(fraction, text, at)
  const parts = readFraction(ruler)
  if (parts !== 'none') return finish(ruler, { kind: 'number', ...parts, whole: false })
  const dashed = matchAt(dashedDigits, text, at)
  // A pressure unit behind it makes it two pressures, or a fraction of inches that no ruler has, not a code.
  const end = at + dashed.length
  const behind = knownAt(text, text[end] === ' ' ? end + 1 : end, true)
  if (dashed !== '' && behind?.kind !== 'unit') return code()
  if (dashed.includes('/') && behind?.kind === 'unit' && /^in/.test(behind.unit))
    return finish(dashed, {
      kind: 'unclear',
      why: `${dashed} isn't a fraction of an inch's ruler. Write it with a decimal point.`,
    })
  const run = matchAt(digits, text, at)
  const power = matchAt(exponent, text, at + run.length)
  const numeral = readNumeral(run, power)
  if (numeral.kind !== 'number') return finish(run + power, numeral)
  return finish(run + power, { ...numeral, whole: /^\d+$/.test(run) })
}

/** Minus and plus signs before a number, or a dash that parts words. */
function signAt(text: string, at: number, previous: Token | undefined): Token {
  const found = matchAt(signs, text, at)
  const marks = found.replaceAll(' ', '')
  const spaced = text[at + found.length] === ' '
  if (marks === '–' && spaced && previous) return { kind: 'connector', text: found, start: at }
  const afterWord = previous !== undefined && !['number', 'unit', 'break', 'percent'].includes(previous.kind)
  const gluedToWord = afterWord && at === previous.start + previous.text.length
  const alike = /^\++$|^[-–]+$/.test(marks) && marks.length <= 2
  return {
    kind: 'sign',
    sense: !alike ? 'not stated' : marks.startsWith('+') ? 'pressure' : 'suction',
    doubled: alike && marks.length === 2,
    unclear: !alike || gluedToWord || (afterWord && spaced),
    glued: gluedToWord,
    text: found,
    start: at,
  }
}

/** An unknown word, or the code that it begins: HK-06, A0612, O.60 with the letter O. */
function wordAt(text: string, at: number): Token {
  const word = matchAt(letters, text, at)
  const end = at + word.length
  return matchAt(gluedNumber, text, end) !== '' && matchAt(gluedDecimal, text, end) === ''
    ? { kind: 'code', text: matchAt(restOfCode, text, at), start: at }
    : { kind: 'word', text: word, start: at }
}

/**
 * The pieces of a plain text (see `plainText`) in order; what says nothing (brackets, colons) is left out.
 * Time grows with the length of the text, at most with its square, and no text makes it throw.
 */
export function tokensOf(text: string): Token[] {
  const tokens: Token[] = []
  let quoting = false
  let at = 0
  while (at < text.length) {
    const previous = tokens.at(-1)
    const afterNumber = previous?.kind === 'number'
    let token: Token | undefined
    if (matchAt(plusOrMinus, text, at) !== '')
      token = { kind: 'plus or minus', text: matchAt(plusOrMinus, text, at), start: at }
    else if (matchAt(digits, text, at) !== '') token = numberAt(text, at)
    else token = knownAt(text, at, afterNumber)
    if (token?.text === '"') {
      // The second of a pair of quotation marks is no inch mark.
      if (!afterNumber || quoting) token = undefined
      quoting = !afterNumber
    } else if (!token && matchAt(signs, text, at) !== '') token = signAt(text, at, previous)
    else if (!token && matchAt(letters, text, at) !== '') token = wordAt(text, at)
    else if (!token && matchAt(breaks, text, at) !== '')
      token = { kind: 'break', text: text.charAt(at), start: at }
    if (token) tokens.push(token)
    at += token ? token.text.length : 1
  }
  return tokens
}
