import { expect, test } from 'vitest'
import {
  accuracyFormOf,
  accuracyWords,
  calibrationWords,
  exampleWords,
  onItsScale,
} from '@/app/gauges/gaugeWords'
import { accuracyForms } from '@/lib/catalogue/accuracyForms'
import { toPascals } from '@/lib/core/pressure'
import type { GaugeBody } from '@/lib/records/kinds/gauge'

const inches = (value: number) => toPascals(value, 'inH2O')
const gauge = (accuracy: Partial<GaugeBody>): GaugeBody => ({
  name: 'G-07',
  unit: 'inH2O',
  combine: 'plus',
  spanPascals: inches(20),
  resolutionPascals: inches(0.001),
  ...accuracy,
})

test('the accuracy at the example reading is worked out by the form of the sheet', () => {
  // By hand: 1 % of 0.60 is 0.006, and 2 counts of 0.001 are 0.002; 0.008 in. w.c. together.
  expect(exampleWords(gauge({ percentOfReading: 1, counts: 2 }))).toEqual([
    'When it shows 0.60 in. w.c., the pressure is within ± 0.0080 in. w.c. of that.',
  ])
  // By hand: the greater of 0.5 % of 20 (0.10) and 1 % of 0.60 (0.006) is 0.10 in. w.c., twice the usual tolerance.
  const coarse = exampleWords(gauge({ percentOfReading: 1, percentOfSpan: 0.5, combine: 'greater' }))
  expect(coarse[0]).toContain('± 0.10 in. w.c.')
  expect(coarse[1]).toContain('too close to call')
})

test('where only the resolution is known, half a step is taken and said to be no accuracy', () => {
  const words = exampleWords(gauge({ resolutionPascals: inches(0.1) }))
  expect(words[0]).toContain('± 0.050 in. w.c.')
  expect(words[1]).toContain('Resolution is no accuracy')
})

test('a gauge whose scale ends below the usual example is asked at the middle of its scale', () => {
  expect(exampleWords(gauge({ unit: 'Pa', spanPascals: 100, percentOfReading: 2 }))[0]).toBe(
    'When it shows 50 Pa, the pressure is within ± 1.0 Pa of that.',
  )
})

test('every accuracy form of the catalogue is known again by its figures', () => {
  for (const form of accuracyForms) {
    const figures = Object.fromEntries(form.fields.map((field) => [field, 1]))
    expect(accuracyFormOf(gauge({ ...figures, combine: form.combine }))?.key).toBe(form.key)
  }
})

test('an accuracy is said as its sheet prints it', () => {
  expect(accuracyWords(gauge({ percentOfReading: 1, counts: 2 }))).toBe('± 1 % of reading, plus 2 counts')
  expect(accuracyWords(gauge({ percentOfSpan: 0.5 }))).toBe('± 0.5 % of full scale')
  expect(accuracyWords(gauge({ percentOfReading: 1, percentOfSpan: 0.5, combine: 'greater' }))).toBe(
    '± 1 % of reading or 0.5 % of full scale, whichever is greater',
  )
  expect(accuracyWords(gauge({}))).toBe('only the resolution is known')
})

test('a figure of the gauge’s own scale comes back as it was typed', () => {
  for (const value of [20, 0.001, 0.01, 2.5])
    expect(onItsScale(inches(value), 'inH2O')).toBe(`${value} in. w.c.`)
})

test.each([
  [undefined, /^No calibration date is on file/],
  ['2026-02-01', /^Past due: its calibration ran out on 1 Feb 2026/],
  ['2026-02-02', /^Due 2 Feb 2026: today\.$/],
  ['2026-02-03', /tomorrow/],
  ['2026-03-04', /in 30 days/],
  ['2026-03-05', /^Due 5 Mar 2026\.$/],
])('calibration due %s is said in words on 2 Feb 2026', (due, words) => {
  expect(calibrationWords(due, '2026-02-02')).toMatch(words)
})
