import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { toPascals } from '@/lib/core/pressure'
import { weighReports } from '@/lib/core/rating'
import { candidatesOf, supports } from '@/lib/core/rating/candidates'
import { photoLabel, readBackDistributor, reportOf, settings, unreadDistributor } from './reports'

const inches = (value: number) => toPascals(value, 'inH2O')
const inHundredths = (pascals: number) => Math.round((pascals / 249.08891) * 1000) / 1000
const valuesOf = (reports: ReturnType<typeof reportOf>[]) =>
  candidatesOf(reports).map(({ pascals, limit }) => [inHundredths(pascals), limit])

describe('candidatesOf and supports, rounding', () => {
  test('candidates are the values at the finest stated resolution; a coarser report supports what rounds to it', () => {
    const reports = [reportOf('0.65'), reportOf('0.7'), reportOf('0.648')]
    // 0.648 rounds to 0.65, and 0.65 to 0.7; but 0.648 itself rounds to 0.6, so 0.7 is another value.
    expect(valuesOf(reports)).toEqual([
      [0.648, 'nominal'],
      [0.7, 'nominal'],
    ])
    expect(valuesOf([reportOf('0.65'), reportOf('0.7')])).toEqual([[0.65, 'nominal']])
  })

  test('a coarser report that agrees makes two sources of one value: Verified', () => {
    // 0.7 rounds from 0.65, one candidate: 0.97 · 0.90 against 39 · (0.03/39) · (0.10/39), as for equal numbers.
    const standing = weighReports([photoLabel('0.65'), readBackDistributor('0.7')], settings)
    expect(standing.probability).toBeCloseTo(0.99991189, 8)
    expect(standing).toMatchObject({ level: 'Verified' })
    expect(standing.pascals).toBeCloseTo(inches(0.65), 9)
  })

  test('a coarser report splits its reliability evenly among the candidates that round to it', () => {
    // Label 0.65 (0.97), distributor A 0.72 (0.75, alone of its kind: w = 1), page 0.7 (0.96, halves to 0.48).
    // 0.65: 0.97 · 0.48 · 0.25 · s;  0.72: 0.03 · s · 0.48 · 0.75;  s = 0.65/39 = 0.01666667
    // none: 38 · (0.03/39) · (0.04/39) · (0.25/39)
    // 0.65: 0.00194;  0.72: 0.00018;  none: 0.0000001922; total 0.0021201922
    const standing = weighReports(
      [
        photoLabel('0.65'),
        unreadDistributor('0.72'),
        reportOf('0.7', { source: 'current literature', proof: 'document' }),
      ],
      settings,
    )
    expect(standing.probability).toBeCloseTo(0.00194 / 0.0021201922, 7)
    expect(standing.rivals[0]?.probability).toBeCloseTo(0.00018 / 0.0021201922, 7)
  })

  test('halves go up: 0.65 rounds to 0.7 and not to 0.6; 0.75 rounds to 0.8 and not to 0.7', () => {
    expect(valuesOf([reportOf('0.65'), reportOf('0.6')])).toHaveLength(2)
    expect(valuesOf([reportOf('0.75'), reportOf('0.7')])).toHaveLength(2)
    expect(valuesOf([reportOf('0.75'), reportOf('0.8')])).toHaveLength(1)
  })

  test('halves go up for every tenth, whatever the binary fraction does', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), (tenths) => {
        const half = ((tenths * 10 + 5) / 100).toFixed(2)
        expect(valuesOf([reportOf(half), reportOf(((tenths + 1) / 10).toFixed(1))])).toHaveLength(1)
        expect(valuesOf([reportOf(half), reportOf((tenths / 10).toFixed(1))])).toHaveLength(2)
      }),
      { seed: 20260112, numRuns: 60 },
    )
  })

  test('the same number with more decimals is one candidate', () => {
    expect(valuesOf([reportOf('0.6'), reportOf('0.60'), reportOf('0.600')])).toEqual([[0.6, 'nominal']])
  })

  test('across units the finer number counts: 150 Pa rounds to 0.60 in. w.c. and to 1.5 mbar', () => {
    // 0.60 in. w.c. is 149.45 Pa, its last decimal 2.49 Pa: 148.21 to 150.70 Pa round to it. 1.5 mbar: 145 to 155.
    const reports = [reportOf('0.60'), reportOf('150', { unit: 'Pa' }), reportOf('1.5', { unit: 'mbar' })]
    expect(candidatesOf(reports).map(({ pascals }) => pascals)).toEqual([150])
    for (const report of reports) expect(supports(report, candidatesOf(reports)[0]!)).toBe(true)
  })

  test('across units 151 Pa does not round to 0.60 in. w.c.: two values', () => {
    expect(valuesOf([reportOf('0.60'), reportOf('151', { unit: 'Pa' })])).toHaveLength(2)
  })

  test('one value in two exact units is one candidate: 0.75 hPa and 75 Pa', () => {
    expect(valuesOf([reportOf('0.75', { unit: 'hPa' }), reportOf('75', { unit: 'Pa' })])).toHaveLength(1)
  })
})

describe('candidatesOf and supports, limit kinds', () => {
  test('the same number with another limit kind is another candidate, and so in dispute', () => {
    const reports = [photoLabel('0.75', { limit: 'maximum' }), readBackDistributor('0.75')]
    expect(valuesOf(reports)).toEqual([
      [0.75, 'nominal'],
      [0.75, 'maximum'],
    ])
    expect(weighReports(reports, settings).level).toBe('In dispute')
  })

  test('“maximum 0.75” and “0.70 ± 0.05” agree: one candidate, shown as the nominal value', () => {
    const reports = [
      photoLabel('0.75', { limit: 'maximum' }),
      readBackDistributor('0.70', { plusMinus: 0.05 }),
    ]
    const standing = weighReports(reports, settings)
    expect(standing).toMatchObject({ level: 'Verified', limit: 'nominal', rivals: [] })
    expect(standing.pascals).toBeCloseTo(inches(0.7), 9)
    expect(standing.toleranceAbove).toBeCloseTo(inches(0.05), 9)
  })

  test('“maximum 0.75” and “0.70 ± 0.10” do not agree', () => {
    const reports = [photoLabel('0.75', { limit: 'maximum' }), reportOf('0.70', { plusMinus: 0.1 })]
    expect(valuesOf(reports)).toHaveLength(2)
  })

  test('“maximum 0.75” and “0.70” without a tolerance do not agree', () => {
    expect(valuesOf([photoLabel('0.75', { limit: 'maximum' }), reportOf('0.70')])).toHaveLength(2)
  })

  test('an uneven tolerance counts on its own side: maximum 0.70 agrees with 0.70 +0.00/−0.05', () => {
    const nominal = reportOf('0.70', { toleranceAbove: 0, toleranceBelow: inches(0.05) })
    expect(valuesOf([photoLabel('0.70', { limit: 'maximum' }), nominal])).toEqual([[0.7, 'nominal']])
    expect(valuesOf([photoLabel('0.65', { limit: 'minimum' }), nominal])).toEqual([[0.7, 'nominal']])
  })

  test('“minimum 0.55” and “0.60 ± 0.05” agree, as the mirror image', () => {
    const reports = [
      photoLabel('0.55', { limit: 'minimum', action: 'opens' }),
      readBackDistributor('0.60', { plusMinus: 0.05, action: 'opens' }),
    ]
    expect(weighReports(reports, settings)).toMatchObject({ level: 'Verified', limit: 'nominal' })
  })

  test('a maximum that two nominal values meet supports both, its reliability split', () => {
    const reports = [
      reportOf('0.70', { plusMinus: 0.05 }),
      reportOf('0.65', { plusMinus: 0.1 }),
      photoLabel('0.75', { limit: 'maximum' }),
    ]
    const candidates = candidatesOf(reports)
    expect(candidates).toHaveLength(2)
    expect(candidates.filter((candidate) => supports(reports[2]!, candidate))).toHaveLength(2)
  })

  test('the widest tolerance that agreeing reports state is shown, and the reason says so', () => {
    const reports = [photoLabel('0.60', { plusMinus: 0.05 }), readBackDistributor('0.60', { plusMinus: 0.1 })]
    const standing = weighReports(reports, settings)
    expect(standing.toleranceAbove).toBeCloseTo(inches(0.1), 9)
    expect(standing.toleranceBelow).toBeCloseTo(inches(0.1), 9)
    expect(standing.reasons.join(' ')).toContain('different tolerances')
  })
})

describe('bench checks', () => {
  const bench = (written: string, parts: Parameters<typeof reportOf>[1] = {}) =>
    reportOf(written, { source: 'bench check', ...parts })

  test('a bench check alone proposes nothing: Not on file, with the lead listed', () => {
    const standing = weighReports([bench('0.61', { proof: 'photo' })], settings)
    expect(standing).toMatchObject({
      level: 'Not on file',
      leads: [{ source: 'bench check', agrees: false }],
    })
  })

  test('a bench check supports within tolerance and gauge uncertainty, and never moves a better rating', () => {
    const label = photoLabel('0.60', { plusMinus: 0.05 })
    const candidate = candidatesOf([label])[0]!
    const gaugeUncertaintyPascals = inches(0.01)
    expect(supports(bench('0.66', { gaugeUncertaintyPascals }), candidate)).toBe(true)
    expect(supports(bench('0.54', { gaugeUncertaintyPascals }), candidate)).toBe(true)
    expect(supports(bench('0.67', { gaugeUncertaintyPascals }), candidate)).toBe(false)
    expect(supports(bench('0.53', { gaugeUncertaintyPascals }), candidate)).toBe(false)
    const standing = weighReports([label, bench('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.97, 12)
    expect(standing).toMatchObject({ level: 'Supported', leads: [{ agrees: true }] })
  })

  test('without a stated tolerance ± 0.05 in. w.c. is assumed, without a gauge uncertainty half a last decimal', () => {
    // 0.60 + 0.05 + 0.005 = 0.655
    const candidate = candidatesOf([photoLabel('0.60')])[0]!
    expect(supports(bench('0.65'), candidate)).toBe(true)
    expect(supports(bench('0.66'), candidate)).toBe(false)
    expect(supports(bench('0.655', { gaugeUncertaintyPascals: inches(0.005) }), candidate)).toBe(true)
  })

  test('a maximum is known only above, a minimum only below', () => {
    const maximum = candidatesOf([photoLabel('0.75', { limit: 'maximum' })])[0]!
    expect(supports(bench('0.40'), maximum)).toBe(true)
    expect(supports(bench('0.80'), maximum)).toBe(false)
    const minimum = candidatesOf([photoLabel('0.55', { limit: 'minimum' })])[0]!
    expect(supports(bench('0.90'), minimum)).toBe(true)
    expect(supports(bench('0.50'), minimum)).toBe(false)
  })

  test('among leads alone it lends its weight to the value that it supports, up to that of the weakest report', () => {
    // Bench check 0.85, held at 0.75; one report at 0.75 has exactly 0.75.
    const listing = reportOf('0.60', { source: 'parts listing' })
    const standing = weighReports([listing, bench('0.61')], settings)
    expect(standing.pascals).toBeCloseTo(inches(0.6), 9)
    expect(standing.probability).toBeCloseTo(0.75, 12)
    expect(standing.level).toBe('Unverified')
  })
})

describe('leads with nothing better beside them', () => {
  test('agreeing leads count once, at the highest reliability, Unverified', () => {
    const leads = (['unknown switch label', 'parts listing', 'remembered', 'imported'] as const).map(
      (source) => reportOf('0.60', { source, proof: 'photo' }),
    )
    const standing = weighReports(leads, settings)
    expect(standing.probability).toBeCloseTo(0.6, 12)
    expect(standing).toMatchObject({ level: 'Unverified', rivals: [] })
    expect(standing.reasons.join(' ')).toContain('Only leads are on file')
  })

  test('the most reliable lead speaks; a weaker one with another value is listed as differing', () => {
    const standing = weighReports(
      [reportOf('0.60', { source: 'parts listing' }), reportOf('0.70', { source: 'remembered' })],
      settings,
    )
    expect(standing.pascals).toBeCloseTo(inches(0.6), 9)
    expect(standing.probability).toBeCloseTo(0.6, 12)
    expect(standing.leads.map(({ agrees }) => agrees)).toEqual([true, false])
    expect(standing.reasons.join(' ')).toContain('do not agree with each other')
  })

  test('equally reliable leads with two values share the weight; the greater magnitude is shown, the other a rival', () => {
    // One report of two candidates: 0.3 each; none: 38 · 0.4/39 = 0.38974359; 0.3/0.98974359 = 0.30310881
    const standing = weighReports(
      [reportOf('0.60', { source: 'parts listing' }), reportOf('0.70', { source: 'parts listing' })],
      settings,
    )
    expect(standing.pascals).toBeCloseTo(inches(0.7), 9)
    expect(standing.probability).toBeCloseTo(0.30310881, 7)
    expect(standing).toMatchObject({ level: 'Unverified', rivals: [{ disputes: false }] })
  })
})
