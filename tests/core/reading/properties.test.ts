import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type PressureUnit, pressureUnits, toPascals } from '@/lib/core/pressure'
import type { Comparison, Instrument, Judgement, Limit, Reading, ReadingSettings } from '@/lib/core/reading'
import { decide } from '@/lib/core/reading/decide'
import { judge } from '@/lib/core/reading/judge'
import { limitInterval } from '@/lib/core/reading/limitInterval'
import { compare, frozen, inches, rating, reading, settings } from './made'

const run = { seed: 20260120, numRuns: 300 }

const gauges = fc.record({
  percentOfReading: fc.option(fc.double({ min: 0, max: 20, noNaN: true }), { nil: undefined }),
  counts: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
  percentOfSpan: fc.option(fc.double({ min: 0, max: 3, noNaN: true }), { nil: undefined }),
  spanPascals: fc.constantFrom(inches(5), inches(20)),
  resolutionPascals: fc.constantFrom(inches(0.001), inches(0.01)),
  combine: fc.constantFrom('plus', 'greater'),
  zeroed: fc.constant(true),
  calibrationDue: fc.constant('2026-06-30'),
}) satisfies fc.Arbitrary<Instrument>

const tolerances = fc.option(fc.double({ min: 0, max: inches(0.1), noNaN: true }), { nil: undefined })
const limits: fc.Arbitrary<Limit> = fc.record({
  pascals: fc.double({ min: inches(0.2), max: inches(2), noNaN: true }),
  toleranceAbove: tolerances,
  toleranceBelow: tolerances,
  kind: fc.constantFrom('nominal', 'maximum', 'minimum'),
  standing: fc.constant('Verified'),
})
const pressures = fc.double({ min: 0, max: inches(3), noNaN: true })
const readings: fc.Arbitrary<Reading> = fc
  .record({
    samples: fc.array(pressures, { minLength: 1, maxLength: 5 }),
    lowest: fc.option(pressures, { nil: undefined }),
    highest: fc.option(pressures, { nil: undefined }),
    kind: fc.constantFrom('one-port', 'opens on rise'),
    phase: fc.constantFrom('pre-purge', 'at make', 'after light-off', 'steady hot'),
    contacts: fc.constantFrom('open', 'closed', 'not read'),
    averaging: fc.boolean(),
    separateStarts: fc.boolean(),
  })
  .map((changed) => reading([], changed))

const against = fc.constantFrom('closes', 'opens')

describe('judge, whatever the reading, the gauge and the limit', () => {
  test('the probability lies in [0, 1] and agrees with the verdict', () => {
    fc.assert(
      fc.property(readings, gauges, limits, against, (read, gauge, rated, action) => {
        const judged = judge(frozen(read), frozen(gauge), frozen(rated), action, frozen(settings))
        expect(judged.probabilityEnough).toBeGreaterThanOrEqual(0)
        expect(judged.probabilityEnough).toBeLessThanOrEqual(1)
        if (judged.verdict === 'enough') expect(judged.probabilityEnough).toBeGreaterThanOrEqual(0.95)
        if (judged.verdict === 'too low') expect(judged.probabilityEnough).toBeLessThanOrEqual(0.05)
        expect(judged.standardUncertaintyPascals).toBeGreaterThan(0)
      }),
      run,
    )
  })

  test('the verdict that leaves the switch closed always clears the worst case', () => {
    fc.assert(
      fc.property(readings, gauges, limits, against, (read, gauge, rated, action) => {
        const judged = judge(read, gauge, rated, action, settings)
        const closed = read.kind === 'opens on rise' ? 'too low' : 'enough'
        if (judged.verdict === closed) {
          expect(judged.clearsWorstCase).toBe(true)
          const { low, high } = limitInterval(rated, settings.assumedTolerancePascals)
          const worst =
            closed === 'enough'
              ? judged.judgedPascals - judged.gaugeHalfWidthPascals - (high ?? Number.POSITIVE_INFINITY)
              : (low ?? Number.NEGATIVE_INFINITY) - judged.judgedPascals - judged.gaugeHalfWidthPascals
          expect(worst).toBeGreaterThanOrEqual(-1e-6)
        }
        if (judged.thin) expect(judged.verdict).toBe(closed)
      }),
      run,
    )
  })

  test('enough needs a known high side, too low a known low side', () => {
    fc.assert(
      fc.property(readings, gauges, limits, against, (read, gauge, rated, action) => {
        const { verdict } = judge(read, gauge, rated, action, settings)
        if (rated.kind === 'maximum') expect(verdict).not.toBe('too low')
        if (rated.kind === 'minimum') expect(verdict).not.toBe('enough')
      }),
      run,
    )
  })

  test('more magnitude never takes “enough” away, and never brings “too low”', () => {
    const rank = { 'too low': 0, 'too close to call': 1, enough: 2 }
    fc.assert(
      fc.property(readings, gauges, limits, against, pressures, (read, gauge, rated, action, more) => {
        const lifted: Reading = {
          ...read,
          samples: read.samples.map((sample) => sample + more),
          ...(read.lowest !== undefined && { lowest: read.lowest + more }),
          ...(read.highest !== undefined && { highest: read.highest + more }),
        }
        // The percentage of the reading makes U grow with it; without that the rank itself is monotone.
        const fixed = { ...gauge, percentOfReading: undefined, counts: gauge.counts ?? 1 }
        const verdictAt = (at: Reading, of: Instrument) => judge(at, of, rated, action, settings).verdict
        const before = verdictAt(inRange(read), fixed)
        const after = verdictAt(inRange(lifted), fixed)
        expect(rank[after]).toBeGreaterThanOrEqual(rank[before])
        if (verdictAt(inRange(read), gauge) === 'enough')
          expect(verdictAt(inRange(lifted), gauge)).not.toBe('too low')
      }),
      run,
    )
  })

  test('what it costs to settle is named only for “too close to call”, and repeats are at most the most', () => {
    fc.assert(
      fc.property(readings, gauges, limits, against, (read, gauge, rated, action) => {
        const judged = judge(read, gauge, rated, action, settings)
        if (judged.verdict !== 'too close to call') expect(judged.moreSamples).toBeUndefined()
        if (typeof judged.moreSamples === 'number') {
          expect(judged.moreSamples).toBeGreaterThan(0)
          expect(judged.moreSamples).toBeLessThan(settings.mostStarts)
        }
      }),
      run,
    )
  })
})

/** Holds that contradict the samples are widened to them, as they would be on a gauge. */
function inRange(read: Reading): Reading {
  const lowest = read.lowest === undefined ? undefined : Math.min(read.lowest, ...read.samples)
  const highest = read.highest === undefined ? undefined : Math.max(read.highest, ...read.samples)
  return { ...read, lowest, highest }
}

describe('a switch that opens on rise is the mirror of one that closes on it', () => {
  test('reflecting value and limit about a pressure swaps “enough” and “too low” and keeps the worst case', () => {
    const turned = {
      enough: 'too low',
      'too low': 'enough',
      'too close to call': 'too close to call',
    } as const
    const kinds = { maximum: 'minimum', minimum: 'maximum', nominal: 'nominal' } as const
    const about = inches(6)
    fc.assert(
      fc.property(
        pressures,
        limits,
        fc.double({ min: 0.5, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (value, rated, u, halfWidth) => {
          const mirrored: Limit = {
            ...rated,
            pascals: about - rated.pascals,
            kind: kinds[rated.kind],
            toleranceAbove: rated.toleranceBelow,
            toleranceBelow: rated.toleranceAbove,
          }
          const t = settings.assumedTolerancePascals
          const one = decide(value, limitInterval(rated, t), u, halfWidth, 'enough')
          const other = decide(about - value, limitInterval(mirrored, t), u, halfWidth, 'too low')
          expect(other.verdict).toBe(turned[one.verdict])
          expect(other.clearsWorstCase).toBe(one.clearsWorstCase)
          expect(other.probabilityEnough).toBeCloseTo(1 - one.probabilityEnough, 9)
        },
      ),
      run,
    )
  })
})

describe('units do not matter', () => {
  const scaled = (judged: Judgement, factor: number) => ({
    verdict: judged.verdict,
    thin: judged.thin,
    clearsWorstCase: judged.clearsWorstCase,
    moreSamples: judged.moreSamples,
    probability: judged.probabilityEnough.toFixed(9),
    margin: (judged.marginPascals / factor).toFixed(6),
  })

  test('everything stated in another unit and converted gives the same judgement', () => {
    const statedIn = (unit: PressureUnit): Judgement => {
      const perInch = toPascals(1, 'inH2O') / toPascals(1, unit)
      const said = (inchesOfWater: number) => toPascals(inchesOfWater * perInch, unit)
      return judge(
        { ...reading([], { phase: 'steady hot' }), samples: [said(0.63), said(0.66)] },
        {
          percentOfReading: 1,
          counts: 1,
          spanPascals: said(5),
          resolutionPascals: said(0.001),
          combine: 'plus',
          zeroed: true,
        },
        {
          pascals: said(0.55),
          toleranceAbove: said(0.05),
          toleranceBelow: said(0.05),
          kind: 'nominal',
          standing: 'Verified',
        },
        'opens',
        settings,
      )
    }
    for (const unit of pressureUnits) expect(scaled(statedIn(unit), 1)).toEqual(scaled(statedIn('inH2O'), 1))
  })

  test('all pressures multiplied by one factor, settings too, leave verdict and probability as they are', () => {
    fc.assert(
      fc.property(
        readings,
        gauges,
        limits,
        fc.constantFrom(1 / 249.08891, 0.01, 10),
        (read, gauge, rated, factor) => {
          const times = (pascals: number | undefined) =>
            pascals === undefined ? undefined : pascals * factor
          const scaledSettings: ReadingSettings = {
            ...settings,
            assumedTolerancePascals: settings.assumedTolerancePascals * factor,
            usualScatterPascals: settings.usualScatterPascals * factor,
            thinGuideline: { ...settings.thinGuideline, pascals: settings.thinGuideline.pascals * factor },
          }
          const other = judge(
            {
              ...read,
              samples: read.samples.map((sample) => sample * factor),
              lowest: times(read.lowest),
              highest: times(read.highest),
            },
            {
              ...gauge,
              spanPascals: gauge.spanPascals * factor,
              resolutionPascals: gauge.resolutionPascals * factor,
            },
            {
              ...rated,
              pascals: rated.pascals * factor,
              toleranceAbove: times(rated.toleranceAbove),
              toleranceBelow: times(rated.toleranceBelow),
            },
            'closes',
            scaledSettings,
          )
          expect(scaled(other, factor)).toEqual(scaled(judge(read, gauge, rated, 'closes', settings), 1))
        },
      ),
      run,
    )
  })
})

describe('compareReading, whatever is on file', () => {
  const optional = fc.option(limits, { nil: undefined })

  test('a danger stands alone, every favourable answer sends for a CO test, and nothing throws', () => {
    fc.assert(
      fc.property(readings, gauges, optional, optional, optional, (read, gauge, closes, opens, unstated) => {
        const result = compare({
          reading: read,
          instrument: gauge,
          rating: rating({ kind: read.kind, closes, opens, unstated }),
        })
        if (!result.ok) {
          expect(['cannot-be-compared', 'settle-rating-first']).toContain(result.problem.code)
          return
        }
        const comparison: Comparison = result.value
        expect(comparison.start ?? comparison.run).toBeDefined()
        const danger = comparison.advice.filter((code) => code.startsWith('stop-'))
        if (danger.length > 0) {
          expect(comparison.advice).toEqual(danger)
          expect(read.contacts).toBe('closed')
        } else {
          if (read.contacts === 'not read')
            expect(comparison.advice[0]).toBe('read-contacts-at-the-same-moment')
          const verdict = (comparison.start ?? comparison.run)?.verdict
          if (verdict === 'enough') expect(comparison.advice).toContain('test-for-co')
        }
        if (comparison.goodMargin) expect(comparison.flutter).toBe(false)
      }),
      run,
    )
  })
})
