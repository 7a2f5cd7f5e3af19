import { scaleLinear } from 'd3-scale'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Column } from '@/app/ui/waterColumn/column'
import { columnScale } from '@/app/ui/waterColumn/columnScale'

const inch = 249.08891 // NIST SP 811 (2008), App. B.8
const standing = { level: 'Verified', asOf: '2026-01-12' } as const
const suction = Object.freeze<Column>({
  unit: 'inH2O',
  sense: 'suction',
  marks: [{ action: 'closes', pascals: 0.58 * inch, limit: 'nominal', standing }],
})

test('columnScale draws suction upwards from the dish line', () => {
  const { heightOf, frame } = columnScale(suction, 200)
  expect(heightOf(0)).toBe(frame.dishLine)
  expect(heightOf(0.3 * inch)).toBeLessThan(frame.dishLine)
  expect(frame.deep).toBe(false)
})

test('columnScale draws positive pressure downwards, and gives it a well', () => {
  const { heightOf, frame } = columnScale({ ...suction, sense: 'pressure' }, 200)
  expect(heightOf(0.3 * inch)).toBeGreaterThan(frame.dishLine)
  expect(frame.deep).toBe(true)
  expect(heightOf(0.58 * inch)).toBeLessThan(frame.foot)
})

test('columnScale makes room for a reading of the other sense', () => {
  const { heightOf, frame } = columnScale(
    { ...suction, reading: { pascals: -40, uncertaintyPascals: 5 } },
    200,
  )
  expect(heightOf(-45)).toBeGreaterThan(frame.dishLine)
  expect(heightOf(-45)).toBeLessThan(frame.foot)
})

test('columnScale opens no other side for the soft edge of a reading of nothing', () => {
  expect(columnScale({ ...suction, reading: { pascals: 0, uncertaintyPascals: 5 } }, 200).frame.deep).toBe(
    false,
  )
})

test('columnScale has the figures that d3-scale finds nice', () => {
  const figures = columnScale(suction, 200).ticks.flatMap(({ words }) => words ?? [])
  const d3 = scaleLinear().domain([0, 0.58]).nice(5)
  expect(figures).toEqual(d3.ticks(5).map(d3.tickFormat(5)))
})

test('columnScale has figures without a sign on either side of the dish line', () => {
  const both = columnScale({ ...suction, reading: { pascals: -120, uncertaintyPascals: 5 } }, 200)
  expect(both.ticks.flatMap(({ words }) => words ?? []).join(' ')).not.toMatch(/[-−]/)
})

test('columnScale keeps all that it shows within its span, in proportion, in every unit and sense', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('inH2O', 'Pa', 'mbar', 'psi'),
      fc.constantFrom('suction', 'pressure', 'not stated'),
      fc.double({ min: 1, max: 2500, noNaN: true }),
      fc.double({ min: -500, max: 2500, noNaN: true }),
      (unit, sense, pascals, readingPascals) => {
        const { heightOf, frame } = columnScale(
          {
            unit,
            sense,
            marks: [{ action: 'opens', pascals, limit: 'nominal', standing }],
            reading: { pascals: readingPascals, uncertaintyPascals: 3 },
          },
          190,
        )
        for (const shown of [pascals, readingPascals]) {
          expect(heightOf(shown)).toBeGreaterThanOrEqual(40 - 1e-9)
          expect(heightOf(shown)).toBeLessThanOrEqual(230 + 1e-9)
        }
        expect(heightOf(pascals / 2)).toBeCloseTo((heightOf(0) + heightOf(pascals)) / 2, 6)
        expect(frame.tubeTop).toBeLessThan(frame.dishLine)
      },
    ),
    { seed: 20260112 },
  )
})

test('columnScale refuses a pressure that is no number', () => {
  expect(() => columnScale({ ...suction, earlier: [{ pascals: Number.NaN }] }, 200)).toThrow(RangeError)
})
