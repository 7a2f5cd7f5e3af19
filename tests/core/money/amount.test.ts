import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { amountWords, minorDigits, mostMinorUnits, readAmount } from '@/lib/core/money'

/** The decimals that the runtime gives a currency (ECMA-402, CurrencyDigits: the minor unit of ISO 4217). */
const digitsOfIntl = (currency: string) =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits

describe('minorDigits(currency)', () => {
  test.each([
    ['USD', 2],
    ['EUR', 2],
    ['JPY', 0],
    ['KWD', 3],
    ['CLF', 4],
    ['XAF', 0],
  ])('%s has %i', (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits)
    expect(digitsOfIntl(currency)).toBe(digits)
  })
})

describe('amountWords(minorUnits, currency) and readAmount(text, currency)', () => {
  test.each([
    [18450, 'USD', 'USD 184.50'],
    [5, 'USD', 'USD 0.05'],
    [0, 'USD', 'USD 0.00'],
    [184, 'JPY', 'JPY 184'],
    [1500, 'KWD', 'KWD 1.500'],
    [123456789, 'USD', 'USD 1,234,567.89'],
    [999_99, 'USD', 'USD 999.99'],
  ] as const)('%i of %s: %s', (minorUnits, currency, words) => {
    expect(amountWords(minorUnits, currency)).toBe(words)
  })

  test.each([
    ['184.50', 'USD', 18450],
    [' 184,5 ', 'USD', 18450],
    ['184', 'USD', 18400],
    ['184', 'JPY', 184],
    ['1.5', 'KWD', 1500],
  ] as const)('%s of %s is read', (text, currency, minorUnits) => {
    expect(readAmount(text, currency)).toEqual({ ok: true, value: minorUnits })
  })

  test.each(['', '-5', '1,234', '1.234', '1 234', '$5', '1.2.3', '1e3', '.5', '99999999999'])(
    '“%s” is no amount in USD',
    (text) => {
      expect(readAmount(text, 'USD')).toMatchObject({ ok: false, problem: { code: 'amount-unclear' } })
    },
  )

  test('what is said is read as the same amount', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: mostMinorUnits }),
        fc.constantFrom('USD', 'JPY', 'KWD', 'CLF'),
        (minorUnits, currency) => {
          const text = amountWords(minorUnits, currency).slice('USD '.length).replaceAll(',', '')
          expect(readAmount(text, currency)).toEqual({ ok: true, value: minorUnits })
        },
      ),
    )
  })

  test('less than nothing, or a part of the smallest unit, is the caller’s mistake', () => {
    expect(() => amountWords(-1, 'USD')).toThrow(RangeError)
    expect(() => amountWords(0.5, 'USD')).toThrow(RangeError)
  })
})
