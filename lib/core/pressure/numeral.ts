/** What a run of digits, points and commas is. */
export type Numeral =
  | { kind: 'number'; value: number; decimals: number }
  /** A date such as 12.06.98, or more digits than a measured number has. */
  | { kind: 'code' }
  | { kind: 'not finite' }
  | { kind: 'unclear'; why: string }

/** No gauge or label gives more; it also keeps text → pascals → text exact. */
const mostDigits = 12

/** The run as plain digits with a point, or why it can't be told. */
function withPoint(run: string): string | { unclear: string } | 'date' {
  if (/^\d+$|^\d*\.\d+$/.test(run)) return run
  if (/^[1-9]\d{0,2},\d{3}$/.test(run))
    return {
      unclear: `${run} may be ${run.replace(',', '.')} or ${run.replace(',', '')}. Write it without a comma.`,
    }
  if (/^\d*,\d+$/.test(run)) return run.replace(',', '.')
  if (/^[1-9]\d{0,2}(?:,\d{3})+\.\d+$|^[1-9]\d{0,2}(?:,\d{3}){2,}$/.test(run)) return run.replaceAll(',', '')
  if (/^\d\d\.\d\d\.(?:\d\d|\d{4})$|^\d{4}\.\d\d\.\d\d$/.test(run)) return 'date'
  return { unclear: `${run} isn't one number. Write it with one decimal point.` }
}

/**
 * A run of digits, points and commas as a number. Point and comma both mark decimals; a comma before exactly three
 * digits could also group thousands and is not guessed.
 * @param run only digits, points and commas, at least one digit
 * @param exponent such as 'e-1', or ''
 * @example readNumeral(',52', '') // { kind: 'number', value: 0.52, decimals: 2 }
 */
export function readNumeral(run: string, exponent: string): Numeral {
  const digits = withPoint(run)
  if (digits === 'date') return { kind: 'code' }
  if (typeof digits !== 'string') return { kind: 'unclear', why: digits.unclear }
  const value = Number(digits + exponent)
  if (!Number.isFinite(value)) return { kind: 'not finite' }
  const fraction = digits.split('.')[1]?.length ?? 0
  const decimals = Math.max(0, fraction - Number(exponent.slice(1)))
  if (digits.length <= mostDigits + 1 && decimals <= mostDigits && value < 10 ** mostDigits)
    return { kind: 'number', value, decimals }
  if (/^\d+$/.test(run) && exponent === '') return { kind: 'code' }
  return {
    kind: 'unclear',
    why: `${run}${exponent} has more digits than a pressure has. Write it as it was read.`,
  }
}

const fractionPattern = /^(?:([1-9]\d{0,2})[ -])?([1-9]\d?)\/(2|4|8|16|32|64)$/

/**
 * A fraction of the inch's ruler, with or without whole inches: 1/2, 1 1/2, 1-3/8. Anything else (1/3, 06/12, 4/2) is
 * none. The decimals are those that give the fraction exactly.
 * @example readFraction('1 1/2') // { value: 1.5, decimals: 1 }
 */
export function readFraction(text: string): { value: number; decimals: number } | 'none' {
  const [, whole = '0', numerator, denominator] = fractionPattern.exec(text) ?? []
  if (numerator === undefined || Number(numerator) >= Number(denominator)) return 'none'
  const value = Number(whole) + Number(numerator) / Number(denominator)
  return { value, decimals: String(value).split('.')[1]?.length ?? 0 }
}
