import { describe, expect, test } from 'vitest'
import { verdictWords } from '@/lib/core/reading'
import {
  coarseGauge,
  compare,
  compared,
  fineGauge,
  inches,
  limit,
  problem,
  ran,
  rating,
  reading,
  settings,
  started,
} from '../core/reading/made'

const inInches = (pascals: number) => pascals / 249.08891

// Margin arithmetic: R is the reading, M the make point, B the break point, t the tolerance, U the gauge. "Clearly
// above" is R − U ≥ M + t. Worked examples by hand; common practice, no published source, except where one is named.
describe('margins by hand (common practice, no published source)', () => {
  const make = rating({ closes: limit(0.7, 0.05) })

  test('make 0.70 ± 0.05, cold 0.86, ±1 % + 1 digit of 0.001: 0.86 − 0.0096 = 0.8504 ≥ 0.75, clearly above', () => {
    const start = started({ reading: reading([0.86]), rating: make })
    expect(inInches(start.gaugeHalfWidthPascals)).toBeCloseTo(0.0096, 10)
    expect(start.verdict).toBe('enough')
    expect(start.clearsWorstCase).toBe(true)
  })

  test('… its margin is 0.16 in. w.c., 40 Pa, 23 % of the make point', () => {
    const start = started({ reading: reading([0.86]), rating: make })
    expect(inInches(start.marginPascals)).toBeCloseTo(0.16, 10)
    expect(start.marginPascals).toBeCloseTo(40, 0)
    expect(start.marginPascals / start.limit.pascals).toBeCloseTo(0.23, 2)
  })

  test('… with a gauge of ±0.5 % of 20 in. it is above only just: 0.86 − 0.10 = 0.76 ≥ 0.75', () => {
    const just = started({ reading: reading([0.86]), rating: make, instrument: coarseGauge })
    expect(inInches(just.gaugeHalfWidthPascals)).toBeCloseTo(0.1, 10)
    expect(just.verdict).toBe('enough')
    const less = started({ reading: reading([0.849]), rating: make, instrument: coarseGauge })
    expect(less.clearsWorstCase).toBe(false)
    expect(less.verdict).toBe('too close to call')
    expect(less.moreSamples).toBe('a finer manometer is needed')
  })

  test('hot: break 0.55 ± 0.05, minimum 0.63: 0.63 − 0.0073 = 0.6227 ≥ 0.60, above, run margin 0.08, thin', () => {
    const run = ran({
      reading: reading([0.63], { phase: 'steady hot', contacts: 'closed', lowest: inches(0.63) }),
      rating: rating({ opens: limit(0.55, 0.05) }),
    })
    expect(inInches(run.judgedPascals - run.gaugeHalfWidthPascals)).toBeCloseTo(0.6227, 10)
    expect(run.verdict).toBe('enough')
    expect(inInches(run.marginPascals)).toBeCloseTo(0.08, 10)
    expect(run.thin).toBe(true)
    expect(run.guideline?.source).toBe('common practice, no published source')
  })

  // Service literature of a two-stage variable-speed condensing furnace, pressure-switch check: hot differential at
  // least 0.15 in. w.c. beyond the tabulated break point, read at about five minutes. Its value serves as a figure.
  test('a maker’s guideline of 0.15 beyond a break point of 0.81: 0.96 is not thin, 0.95 is', () => {
    const maker = {
      ...settings,
      thinGuideline: { pascals: inches(0.15), source: 'service literature, two-stage furnace' },
    }
    const hot = (value: number) =>
      ran({
        reading: reading([value], { phase: 'steady hot', contacts: 'closed' }),
        rating: rating({ opens: limit(0.81, 0.05) }),
        settings: maker,
      })
    expect(hot(0.96).thin).toBe(false)
    expect(hot(0.95).thin).toBe(true)
    expect(hot(0.95).guideline).toEqual(maker.thinGuideline)
  })

  test('“maximum close”: the maximum stands in the place of M + t, so 0.75 max and 0.70 ± 0.05 clear alike', () => {
    for (const value of [0.74, 0.757, 0.758, 0.76, 0.8]) {
      const maximum = started({
        reading: reading([value]),
        rating: rating({ closes: limit(0.75, undefined, { kind: 'maximum' }) }),
      })
      expect(maximum.clearsWorstCase).toBe(
        started({ reading: reading([value]), rating: make }).clearsWorstCase,
      )
    }
  })

  test('“maximum close” only: however low the reading, too low can’t be said', () => {
    const start = started({
      reading: reading([0.3]),
      rating: rating({ closes: limit(0.75, undefined, { kind: 'maximum' }) }),
    })
    expect(start.verdict).toBe('too close to call')
  })

  test('“break ± t” only: above or below the break point is said, the make point stays unknown', () => {
    const lone = rating({ opens: limit(0.55, 0.05) })
    const above = compared({ reading: reading([0.9], { contacts: 'closed' }), rating: lone })
    expect(above.start).toBeUndefined()
    expect(above.run?.verdict).toBe('enough')
    expect(above.advice).toContain('make-point-not-on-file')
    expect(verdictWords(compare({ reading: reading([0.9]), rating: lone }))).toEqual([
      'Enough to hold it closed',
    ])
    const below = compared({ reading: reading([0.3]), rating: lone })
    expect(below.run?.verdict).toBe('too low')
  })

  test('clearly below is R + U < M − t: 0.60 + 0.007 < 0.65', () => {
    expect(started({ reading: reading([0.6]), rating: make }).verdict).toBe('too low')
  })

  test('a gauge good to ±0.10 swallows a whole hysteresis band: 0.72 against 0.70 is too close to call', () => {
    const start = started({ reading: reading([0.72]), rating: make, instrument: coarseGauge })
    expect(start.verdict).toBe('too close to call')
  })
})

describe('facts of the trade (common practice, no published source)', () => {
  const labelled = rating({ closes: limit(0.94) })

  test('labelled make 0.94, 0.80 measured, contact open: too low to close it, leave the switch fitted', () => {
    const result = compare({ reading: reading([0.8]), rating: labelled })
    expect(verdictWords(result)).toEqual(['Too low to close it'])
    const comparison = compared({ reading: reading([0.8]), rating: labelled })
    expect(comparison.advice[0]).toBe('open-contact-agrees-leave-it-fitted')
    expect(comparison.advice).not.toContain('before-the-switch-is-called-faulty')
    expect(comparison.assumed.join(' ')).toContain('± 0.05 in. w.c.')
  })

  test('labelled make 0.94, 1.10 measured, contact open: enough, and what must be on record comes first', () => {
    expect(verdictWords(compare({ reading: reading([1.1]), rating: labelled }))).toEqual([
      'Enough to close it',
    ])
    const { advice } = compared({ reading: reading([1.1]), rating: labelled })
    expect(advice).toContain('before-the-switch-is-called-faulty')
    expect(advice).toContain('test-for-co')
  })

  test('compare magnitudes: −0.85 is more suction than −0.70', () => {
    const make = rating({ closes: limit(0.78, 0.02) })
    expect(started({ reading: reading([0.85]), rating: make }).verdict).toBe('enough')
    expect(started({ reading: reading([0.7]), rating: make }).verdict).toBe('too low')
  })

  test('no altitude correction is made to a reading: nothing here asks for one', () => {
    const start = started({ reading: reading([0.86]), rating: rating({ closes: limit(0.7, 0.05) }) })
    expect(inInches(start.meanPascals)).toBeCloseTo(0.86, 12)
  })
})

// The usual mistakes of a rating and a reading (common practice, no published source), as far as a reading shows them.
describe('usual mistakes', () => {
  test('wrong stage measured: a low-fire reading is not judged by the high-fire rating', () => {
    const { code, message } = problem({
      reading: reading([0.86], { stage: 'low fire' }),
      rating: rating({ closes: limit(0.7, 0.05), stage: 'high fire' }),
    })
    expect(code).toBe('cannot-be-compared')
    expect(message).toContain('Measure on high fire')
  })

  test('one port read where a differential is rated: not judged, and both ports asked for', () => {
    const { code, message } = problem({
      reading: reading([0.86], { kind: 'two-port', between: 'port and room' }),
      rating: rating({ closes: limit(0.7, 0.05), kind: 'two-port', between: 'not stated' }),
    })
    expect(code).toBe('cannot-be-compared')
    expect(message).toContain('across both ports')
  })

  test('sign dropped: pressure is not judged by a suction rating', () => {
    const { code, message } = problem({
      reading: reading([0.86], { sense: 'pressure' }),
      rating: rating({ closes: limit(0.7, 0.05) }),
    })
    expect(code).toBe('cannot-be-compared')
    expect(message).toContain('which hose went to which port')
  })

  test('sign kept in the number: a signed sample is a caller’s mistake', () => {
    expect(() =>
      compare({ reading: reading([-0.86]), rating: rating({ closes: limit(0.7, 0.05) }) }),
    ).toThrow(RangeError)
  })

  test('decimal misread: against 0.06 in place of 0.60 a reading of 0.44 passes, against 0.60 it does not', () => {
    expect(started({ reading: reading([0.44]), rating: rating({ closes: limit(0.06) }) }).verdict).toBe(
      'enough',
    )
    const disputed = limit(0.6, 0.05, {
      standing: 'In dispute',
      candidates: [limit(0.6, 0.05), limit(0.06, 0.05)],
    })
    expect(problem({ reading: reading([0.44]), rating: rating({ closes: disputed }) }).code).toBe(
      'settle-rating-first',
    )
  })

  test('break taken for make: a number of unstated action never passes a reading', () => {
    const unstated = rating({ unstated: limit(0.55, 0.05) })
    expect(problem({ reading: reading([0.7]), rating: unstated }).message).toContain('Ask which it is')
    expect(started({ reading: reading([0.4]), rating: unstated }).verdict).toBe('too low')
  })

  test('gas pressure entered as a switch value: a gas-pressure switch is no air switch', () => {
    const { message } = problem({
      reading: reading([8], { kind: 'gas pressure' }),
      rating: rating({ closes: limit(8), kind: 'gas pressure' }),
    })
    expect(message).toContain('gas-pressure switch is no air switch')
  })

  test('averaging hides the minimum: a hot average never passes, a held minimum may', () => {
    const break55 = rating({ opens: limit(0.55, 0.05) })
    const averaged = reading([0.9], { phase: 'steady hot', contacts: 'closed', averaging: true })
    expect(ran({ reading: averaged, rating: break55 }).verdict).toBe('too close to call')
    expect(ran({ reading: averaged, rating: break55 }).clearsWorstCase).toBe(false)
    expect(compared({ reading: averaged, rating: break55 }).advice).toContain('read-with-minimum-hold')
    expect(ran({ reading: { ...averaged, lowest: inches(0.88) }, rating: break55 }).verdict).toBe('enough')
  })
})

describe('the same reading, whichever gauge form it was read with', () => {
  test('a finer gauge never makes u larger', () => {
    const at = (instrument: typeof fineGauge) =>
      started({ reading: reading([0.86]), rating: rating({ closes: limit(0.7, 0.05) }), instrument })
    expect(at(fineGauge).standardUncertaintyPascals).toBeLessThan(at(coarseGauge).standardUncertaintyPascals)
  })
})
