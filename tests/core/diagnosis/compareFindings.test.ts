import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type PackedCases, packCases } from '@/lib/core/diagnosis'
import { compareFindings } from '@/lib/core/diagnosis/compareFindings'
import type { Observed } from '@/lib/core/diagnosis/readObservations'

const values = ['a', 'b', 'c']
const catalogueOf = (howMany: number) => ({
  causes: [{ id: 'x', prior: 1 }],
  findings: Array.from({ length: howMany }, (_, place) => ({ id: `f${place}`, values })),
})

function compared(table: PackedCases, observed: readonly Observed[]) {
  const into = new Int32Array(table.words * 32)
  compareFindings(table, observed, into)
  return [...into.subarray(0, table.ids.length)]
}

describe('compareFindings(table, observed, into)', () => {
  test('counts agreements and disagreements as looking at every case does, for any number of cases and findings', () => {
    const made = fc
      .record({ findings: fc.integer({ min: 1, max: 40 }), cases: fc.integer({ min: 0, max: 70 }) })
      .chain(({ findings, cases }) =>
        fc.record({
          now: fc.array(fc.integer({ min: -1, max: 2 }), { minLength: findings, maxLength: findings }),
          earlier: fc.array(
            fc.array(fc.integer({ min: -1, max: 2 }), { minLength: findings, maxLength: findings }),
            {
              minLength: cases,
              maxLength: cases,
            },
          ),
        }),
      )
    fc.assert(
      fc.property(made, ({ now, earlier }) => {
        const observed = now.flatMap((value, finding) => (value < 0 ? [] : [{ finding, value }]))
        const table = packCases(
          catalogueOf(now.length),
          earlier.map((row, place) => ({
            id: String(place).padStart(3, '0'),
            findings: Object.fromEntries(
              row.map((value, finding) => [`f${finding}`, values[value] ?? 'not checked']),
            ),
          })),
        )
        const expected = earlier.map((row) => {
          const agreements = observed.filter(({ finding, value }) => row[finding] === value).length
          const both = observed.filter(({ finding }) => row[finding]! >= 0).length
          return (both - agreements) * (observed.length + 1) + agreements
        })
        expect(compared(table, observed)).toEqual(expected)
      }),
      { seed: 20260302, numRuns: 200 },
    )
  })

  test.each([15, 16, 255])('counts up to %i findings', (howMany) => {
    const catalogue = catalogueOf(howMany)
    const findings = Object.fromEntries(catalogue.findings.map(({ id }) => [id, 'b']))
    const table = packCases(catalogue, [{ id: 'one', findings }])
    const observedAs = (value: number) => catalogue.findings.map((_, finding) => ({ finding, value }))
    expect(compared(table, observedAs(1))).toEqual([howMany])
    expect(compared(table, observedAs(0))).toEqual([howMany * (howMany + 1)])
  })

  test('throws beyond 255 findings', () => {
    const table = packCases(catalogueOf(256), [])
    const observed = Array.from({ length: 256 }, (_, finding) => ({ finding, value: 0 }))
    expect(() => compared(table, observed)).toThrow(RangeError)
  })
})
