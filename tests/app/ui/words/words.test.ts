import fc from 'fast-check'
import { expect, test } from 'vitest'
import { otherUnit, toleranceWords } from '@/app/ui/words/pressureWords'
import { sayAge } from '@/app/ui/words/sayAge'
import { sayDate, sayMoment } from '@/app/ui/words/sayDate'
import { stopAfter } from '@/app/ui/words/stopAfter'

const inch = 249.08891 // NIST SP 811 (2008), App. B.8

test('stopAfter: a unit that ends with a full stop gets no second one', () => {
  expect(stopAfter('0.00 in. w.c.')).toBe('')
  expect(stopAfter('125 Pa')).toBe('.')
})

test('sayDate gives the day on the clock of whoever said it, whatever the zone of the reader', () => {
  expect(sayDate('2026-01-12')).toBe('12 Jan 2026')
  expect(sayDate('2026-01-12T23:50:00-07:00')).toBe('12 Jan 2026')
  expect(sayDate('2026-01-12T00:10:00+09:00')).toBe('12 Jan 2026')
})

test('sayDate agrees with the platform’s own formatter on every day of sixty years', () => {
  const platform = new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  })
  fc.assert(
    fc.property(
      fc.date({ min: new Date('1990-01-01'), max: new Date('2050-12-31'), noInvalidDate: true }),
      (date) => {
        // British English writes Sept with four letters; everything else is the same.
        expect(sayDate(date.toISOString())).toBe(platform.format(date).replace('Sept', 'Sep'))
      },
    ),
    { seed: 20260112 },
  )
})

test('sayDate leaves alone what is no date', () => {
  expect(sayDate('last winter')).toBe('last winter')
  expect(sayDate('2026-13-01')).toBe('2026-13-01')
})

test('sayMoment adds the time of day where there is one', () => {
  expect(sayMoment('2026-01-12T14:05:33Z')).toBe('12 Jan 2026, 14:05')
  expect(sayMoment('2026-01-12')).toBe('12 Jan 2026')
})

test.each([
  ['2026-01-12T10:00:00Z', 'just now'],
  ['2026-01-12T09:59:01Z', 'just now'],
  ['2026-01-12T09:59:00Z', '1 min ago'],
  ['2026-01-12T09:46:00Z', '14 min ago'],
  ['2026-01-12T09:00:01Z', '59 min ago'],
  ['2026-01-12T09:00:00Z', '1 h ago'],
  ['2026-01-11T10:00:01Z', '23 h ago'],
  ['2026-01-11T10:00:00Z', '1 day ago'],
  ['2026-01-02T10:00:00Z', '10 days ago'],
])('sayAge of %s at ten o’clock on 12 January is %s', (from, words) => {
  expect(sayAge(from, '2026-01-12T10:00:00Z')).toBe(words)
})

test('sayAge calls the future just now, because clocks run ahead', () => {
  expect(sayAge('2026-01-12T10:03:00Z', '2026-01-12T10:00:00Z')).toBe('just now')
})

test('sayAge throws a RangeError for what is no moment', () => {
  expect(() => sayAge('yesterday', '2026-01-12T10:00:00Z')).toThrow(RangeError)
})

test('toleranceWords says both sides once when they are equal', () => {
  const even = { toleranceAbove: 0.05 * inch, toleranceBelow: 0.05 * inch, limit: 'nominal' } as const
  expect(toleranceWords(even, 'inH2O')).toBe('± 0.05')
  expect(toleranceWords(even, 'Pa')).toBe('± 12')
})

test('toleranceWords keeps unequal and one-sided tolerances apart', () => {
  const uneven = { toleranceAbove: 0, toleranceBelow: 0.05 * inch, limit: 'nominal' } as const
  expect(toleranceWords(uneven, 'inH2O')).toBe('+ 0.00 − 0.05')
  expect(toleranceWords({ limit: 'maximum' }, 'inH2O')).toBe('maximum')
  expect(toleranceWords({ limit: 'minimum', toleranceBelow: 0.1 * inch }, 'inH2O')).toBe(
    'minimum, + 0.00 − 0.10',
  )
})

test('toleranceWords invents no tolerance that nobody stated', () => {
  expect(toleranceWords({ limit: 'nominal' }, 'inH2O')).toBe('')
})

test('otherUnit is never the reader’s own', () => {
  for (const unit of ['inH2O', 'Pa', 'mbar', 'kPa', 'psi'] as const) expect(otherUnit(unit)).not.toBe(unit)
})
