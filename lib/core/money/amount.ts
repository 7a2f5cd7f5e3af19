import { failure, type Result, success } from '../result'
import { minorDigits } from './minorDigits'

/** More is a slip, whatever the currency. */
export const mostMinorUnits = 1_000_000_000

/**
 * An amount as people read it: the currency's code first, so that no dollar is taken for another.
 * @param minorUnits a whole number, not negative
 * @example amountWords(18450, 'USD') // 'USD 184.50'
 */
export function amountWords(minorUnits: number, currency: string): string {
  if (!Number.isSafeInteger(minorUnits) || minorUnits < 0)
    throw new RangeError(`An amount is a whole number of the smallest unit, not ${minorUnits}`)
  const digits = minorDigits(currency)
  const figures = String(minorUnits).padStart(digits + 1, '0')
  const whole = figures.slice(0, figures.length - digits).replace(/\B(?=(\d{3})+$)/g, ',')
  return `${currency} ${whole}${digits === 0 ? '' : `.${figures.slice(-digits)}`}`
}

/** Digits, and after a point or a comma at most so many decimals that a comma cannot stand between thousands. */
const typed = /^(\d+)(?:\.(\d+)|,(\d{1,2}))?$/

/**
 * An amount as people type it, in the smallest unit of its currency.
 * @returns a problem with the code 'amount-unclear' for what is no amount, or has a decimal too many
 * @example readAmount('184.50', 'USD') // 18450
 */
export function readAmount(text: string, currency: string): Result<number> {
  const digits = minorDigits(currency)
  const [, whole, afterPoint, afterComma] = typed.exec(text.trim()) ?? []
  const decimals = afterPoint ?? afterComma ?? ''
  const example = digits === 0 ? '184' : `184.${'50'.padEnd(digits, '0').slice(0, digits)}`
  if (whole === undefined || decimals.length > digits)
    return failure(
      'amount-unclear',
      `Type the amount in figures alone, for instance ${example}: no sign, nothing between the thousands.`,
    )
  const minorUnits = Number(whole + decimals.padEnd(digits, '0'))
  return minorUnits > mostMinorUnits
    ? failure('amount-unclear', 'No part costs as much as that. Check the amount.')
    : success(minorUnits)
}
