import { describe, expect, test } from 'vitest'
import { adviceCodes, adviceText, verdictWords } from '@/lib/core/reading'
import {
  coarseGauge,
  compare,
  compared,
  fineGauge,
  frozen,
  inches,
  limit,
  problem,
  ran,
  rating,
  reading,
  settings,
  started,
} from './made'

const pair = rating({ closes: limit(0.7, 0.05), opens: limit(0.55, 0.05) })
const hot = { phase: 'steady hot', contacts: 'closed' } as const
const onRise = { kind: 'opens on rise', sense: 'pressure', tap: 'vent side' } as const
const risePair = rating({ ...onRise, closes: limit(0.8, 0.05), opens: limit(1, 0.05) })
const words = (...given: Parameters<typeof compare>) => verdictWords(compare(...given))

describe('compareReading: which limit answers which question', () => {
  test('a cold reading is held against the make point: will it start?', () => {
    for (const phase of ['pre-purge', 'at make'] as const) {
      const comparison = compared({ reading: reading([0.9], { phase }), rating: pair })
      expect(comparison.start?.against).toBe('closes')
      expect(comparison.run).toBeUndefined()
    }
  })

  test('a hot reading is held against the break point: will it stay on?', () => {
    for (const phase of ['after light-off', 'steady hot'] as const) {
      const comparison = compared({ reading: reading([0.9], { ...hot, phase }), rating: pair })
      expect(comparison.run?.against).toBe('opens')
      expect(comparison.start).toBeUndefined()
    }
  })

  test('cold the mean is judged, hot the lowest', () => {
    expect(started({ reading: reading([0.8, 0.9]), rating: pair }).judgedPascals).toBeCloseTo(
      inches(0.85),
      10,
    )
    expect(ran({ reading: reading([0.8, 0.9], hot), rating: pair }).judgedPascals).toBe(inches(0.8))
    const held = ran({ reading: reading([0.8, 0.9], { ...hot, lowest: inches(0.62) }), rating: pair })
    expect(held.judgedPascals).toBe(inches(0.62))
    expect(held.meanPascals).toBeCloseTo(inches(0.85), 10)
  })

  test('a hot reading with no break point on file is judged as to closing, and the break point asked for', () => {
    const comparison = compared({
      reading: reading([0.6], hot),
      rating: rating({ closes: limit(0.7, 0.05) }),
    })
    expect(comparison.start?.verdict).toBe('too low')
    expect(comparison.run).toBeUndefined()
    expect(comparison.advice).toContain('break-point-not-on-file')
    expect(comparison.advice.some((code) => code.startsWith('stop-'))).toBe(false)
  })

  test('a number of unstated action is used only when nothing else is on file', () => {
    const both = rating({ closes: limit(0.7, 0.05), unstated: limit(0.3, 0.05) })
    expect(started({ reading: reading([0.5]), rating: both }).against).toBe('closes')
    const alone = rating({ unstated: limit(0.7, 0.05) })
    expect(words({ reading: reading([0.5]), rating: alone })).toEqual(['Too low to close it'])
    expect(compared({ reading: reading([0.5]), rating: alone }).advice).toContain('action-not-stated')
    expect(problem({ reading: reading([0.9]), rating: alone }).code).toBe('cannot-be-compared')
    expect(problem({ reading: reading([0.69]), rating: alone }).code).toBe('cannot-be-compared')
  })

  test('with nothing on file it says so, and what to do meanwhile', () => {
    const { code, message } = problem({ reading: reading([0.9]), rating: rating() })
    expect(code).toBe('cannot-be-compared')
    expect(message).toContain('Start a rating request')
  })
})

describe('compareReading: one-sided limits', () => {
  const closes = (kind: 'maximum' | 'minimum') => rating({ closes: limit(0.7, undefined, { kind }) })

  test('a maximum is known only above: enough can be said, too low can’t', () => {
    expect(started({ reading: reading([0.8]), rating: closes('maximum') }).verdict).toBe('enough')
    expect(started({ reading: reading([0.1]), rating: closes('maximum') }).verdict).toBe('too close to call')
  })

  test('a minimum is known only below: too low can be said, enough can’t', () => {
    expect(started({ reading: reading([0.6]), rating: closes('minimum') }).verdict).toBe('too low')
    const high = started({ reading: reading([2]), rating: closes('minimum') })
    expect(high.verdict).toBe('too close to call')
    expect(high.clearsWorstCase).toBe(false)
    expect(high.moreSamples).toBeUndefined()
  })

  test('no tolerance is assumed for a one-sided limit, and one is for a nominal', () => {
    expect(compared({ reading: reading([0.8]), rating: closes('maximum') }).assumed.join()).not.toContain(
      'tolerance',
    )
    const start = started({ reading: reading([0.8]), rating: rating({ closes: limit(0.7) }) })
    expect(start.budget.tolerance).toBeCloseTo(inches(0.05) / Math.sqrt(3), 10)
  })
})

describe('compareReading: a switch that opens on rise, both tests turned round', () => {
  test('below the opening point it is too low to open, so it stays closed', () => {
    const cold = { reading: reading([0.6], { ...onRise, contacts: 'closed' }), rating: risePair }
    expect(words(cold)).toEqual(['Too low to open it'])
    expect(started(cold).clearsWorstCase).toBe(true)
    expect(compared(cold).advice).toContain('look-past-this-switch')
    expect(compared(cold).advice).toContain('test-for-co')
  })

  test('above it, enough to open it, and an open contact agrees: the vent side is looked at', () => {
    const high = { reading: reading([1.2], onRise), rating: risePair }
    expect(words(high)).toEqual(['Enough to open it'])
    expect(compared(high).advice.slice(0, 2)).toEqual([
      'open-contact-agrees-leave-it-fitted',
      'find-what-raises-the-pressure',
    ])
  })

  test('hot, the highest is judged, and near the opening point is thin', () => {
    const run = ran({
      reading: reading([0.8], { ...onRise, ...hot, highest: inches(0.92) }),
      rating: risePair,
    })
    expect(run.judgedPascals).toBe(inches(0.92))
    expect(run.verdict).toBe('too low')
    expect(run.thin).toBe(true)
    expect(ran({ reading: reading([0.8], { ...onRise, ...hot }), rating: risePair }).thin).toBe(false)
  })

  test('still closed above the opening point is a danger, and stands alone', () => {
    const { advice } = compared({
      reading: reading([1.2], { ...onRise, contacts: 'closed' }),
      rating: risePair,
    })
    expect(advice).toEqual(['stop-closed-above-its-opening-point'])
  })

  test('open below the closing point does not agree; open between the two may be left from a peak', () => {
    const at = (value: number) => compared({ reading: reading([value], onRise), rating: risePair }).advice
    expect(at(0.5)).toContain('before-the-switch-is-called-faulty')
    expect(at(0.5)).not.toContain('open-between-break-and-make')
    expect(at(0.9)).toContain('open-between-break-and-make')
    const { advice } = compared({
      reading: reading([0.5], onRise),
      rating: rating({ ...onRise, opens: limit(1, 0.05) }),
    })
    expect(advice).toContain('closing-point-not-on-file')
  })

  test('with only the closing point on file it is said whether it would be held open', () => {
    const lone = rating({ ...onRise, closes: limit(0.8, 0.05) })
    expect(words({ reading: reading([0.6], onRise), rating: lone })).toEqual(['Too low to hold it open'])
    expect(words({ reading: reading([0.95], { ...onRise, ...hot }), rating: lone })).toEqual([
      'Enough to hold it open',
    ])
    expect(
      compared({ reading: reading([0.95], { ...onRise, contacts: 'closed' }), rating: lone }).advice,
    ).toContain('break-point-not-on-file')
  })
})

describe('compareReading: can’t be compared, and what to measure instead', () => {
  const closes = { closes: limit(0.7, 0.05) }
  test.each([
    ['a sensor', { kind: 'sensor' }, { kind: 'sensor' }, 'table of targets'],
    ['a gas-pressure rating', {}, { kind: 'gas pressure' }, 'its own port'],
    ['another kind', {}, { kind: 'two-port' }, 'switch that was measured'],
    ['another stage', { stage: 'low fire' }, { stage: 'high fire' }, 'Measure on high fire'],
    ['a single-stage rating on low fire', { stage: 'low fire' }, {}, 'Measure on single stage'],
    ['an unrecorded stage', { stage: 'not stated' }, { stage: 'high fire' }, 'was not recorded'],
    ['another tap', { tap: 'inducer inlet' }, {}, 'hose from the collector box'],
    ['an unrecorded tap', { tap: 'not stated' }, {}, 'Follow the hose'],
    ['the room for the cabinet', {}, { between: 'port and cabinet' }, 'the cabinet, door on'],
    ['unrecorded points', { between: 'not stated' }, {}, 'between which points'],
    ['two ports for one', { between: 'two ports' }, { between: 'not stated' }, 'vent hole'],
    ['another sense', { sense: 'pressure' }, {}, 'record the sign'],
    ['an unrecorded sense', { sense: 'not stated' }, {}, 'does not say whether'],
    ['the door off', { door: 'off' }, {}, 'Fit the door'],
  ] as const satisfies readonly (readonly [string, object, object, string])[])(
    '%s',
    (_, read, rated, says) => {
      const { code, message } = problem({
        reading: reading([0.9], read),
        rating: rating({ ...closes, ...rated }),
      })
      expect(code).toBe('cannot-be-compared')
      expect(message).toContain(says)
      expect(
        verdictWords(compare({ reading: reading([0.9], read), rating: rating({ ...closes, ...rated }) })),
      ).toEqual(["Can't be compared"])
    },
  )

  test('what the rating leaves open is taken from the reading, and said', () => {
    const comparison = compared({
      reading: reading([0.9]),
      rating: rating({
        ...closes,
        between: 'not stated',
        tap: 'not stated',
        stage: 'not stated',
        sense: 'not stated',
      }),
    })
    expect(comparison.openPoints).toEqual(['between', 'tap', 'stage', 'sense'])
    expect(comparison.assumed.slice(0, 4).join(' ')).toMatch(
      /port and room.*collector box.*single stage.*suction/s,
    )
  })

  test('a two-port switch works across both ports, whether or not the rating says so', () => {
    const comparison = compared({
      reading: reading([0.9], { kind: 'two-port', between: 'two ports' }),
      rating: rating({ ...closes, kind: 'two-port', between: 'not stated' }),
    })
    expect(comparison.openPoints).toEqual([])
    expect(comparison.assumed.join(' ')).toContain('works across both')
  })

  test('a single-stage rating needs no stage recorded', () => {
    expect(
      compared({ reading: reading([0.9], { stage: 'not stated' }), rating: rating(closes) }).start,
    ).toBeDefined()
  })
})

describe('compareReading: at rest', () => {
  const rest = (value: number, changed: Parameters<typeof reading>[1] = {}) =>
    reading([value], { phase: 'rest', ...changed })

  test('a gauge away from zero by more than 0.01 in. w.c. is zeroed first', () => {
    expect(problem({ reading: rest(0.011), rating: pair }).code).toBe('zero-first')
    expect(compared({ reading: rest(0.01), rating: pair }).advice).toEqual(['rest-agrees'])
  })

  test('… and a contact closed at rest is said all the same', () => {
    expect(problem({ reading: rest(0.2, { contacts: 'closed' }), rating: pair }).message).toContain(
      'leave it off',
    )
    expect(problem({ reading: rest(0.2), rating: pair }).message).not.toContain('leave it off')
    const raw = { ...fineGauge, zeroed: false }
    const unzeroed = problem({ reading: rest(0, { contacts: 'closed' }), rating: pair, instrument: raw })
    expect(unzeroed.code).toBe('zero-first')
    expect(unzeroed.message).toContain('leave it off')
  })

  test('a gauge that was not zeroed is zeroed first, in any phase', () => {
    expect(
      problem({ reading: reading([0.9]), rating: pair, instrument: { ...fineGauge, zeroed: false } }).code,
    ).toBe('zero-first')
  })

  test('closed at rest is a danger, except for a switch that opens on rise', () => {
    expect(compared({ reading: rest(0, { contacts: 'closed' }), rating: pair }).advice).toEqual([
      'stop-closed-at-rest',
    ])
    expect(
      compared({ reading: rest(0, { ...onRise, contacts: 'closed' }), rating: risePair }).advice,
    ).toEqual(['rest-agrees'])
    expect(compared({ reading: rest(0, onRise), rating: risePair }).advice).toEqual([
      'before-the-switch-is-called-faulty',
    ])
  })

  test('nothing is judged at rest, with or without a rating', () => {
    const comparison = compared({ reading: rest(0, { contacts: 'not read' }), rating: rating() })
    expect(comparison.start ?? comparison.run).toBeUndefined()
    expect(comparison.advice).toEqual(['read-contacts-at-the-same-moment'])
    expect(words({ reading: rest(0), rating: pair })).toEqual([])
  })
})

describe('compareReading: standings', () => {
  test('an Unverified rating is compared, and the comparison carries that standing', () => {
    const comparison = compared({
      reading: reading([0.9]),
      rating: rating({ closes: limit(0.7, 0.05, { standing: 'Unverified' }) }),
    })
    expect(comparison.standing).toBe('Unverified')
    expect(comparison.start?.limit.standing).toBe('Unverified')
  })

  const disputed = (values: number[], own = 0.7) =>
    rating({
      closes: limit(own, 0.05, {
        standing: 'In dispute',
        candidates: values.map((value) => limit(value, 0.05, { standing: 'Unverified' })),
      }),
    })

  test('in dispute, one verdict that all candidates share is given, with the figures of the closest', () => {
    const start = started({ reading: reading([1]), rating: disputed([0.7, 0.85]) })
    expect(start.verdict).toBe('enough')
    expect(start.sharedBy).toBe(2)
    expect(start.limit.pascals).toBe(inches(0.85))
    expect(start.limit.standing).toBe('In dispute')
    expect(start.marginPascals).toBeCloseTo(inches(0.15), 9)
    expect(started({ reading: reading([0.5]), rating: disputed([0.7, 0.85]) }).verdict).toBe('too low')
  })

  test('the value that is shown counts as a candidate, listed or not', () => {
    expect(started({ reading: reading([1]), rating: disputed([0.8]) }).sharedBy).toBe(2)
    expect(problem({ reading: reading([1]), rating: disputed([0.7], 1.2) }).code).toBe('settle-rating-first')
  })

  test('candidates that disagree, or are not known, have to be settled first', () => {
    expect(problem({ reading: reading([0.8]), rating: disputed([0.7, 0.9]) }).code).toBe(
      'settle-rating-first',
    )
    expect(problem({ reading: reading([1]), rating: disputed([]) }).code).toBe('settle-rating-first')
  })

  test('thin is said when any candidate makes it thin', () => {
    const opens = limit(0.55, 0.05, {
      standing: 'In dispute',
      candidates: [limit(0.55, 0.05), limit(0.45, 0.05)],
    })
    expect(ran({ reading: reading([0.63], hot), rating: rating({ opens }) }).thin).toBe(true)
  })

  test('a dispute of the make point does not stop a hot reading from being judged', () => {
    const comparison = compared({
      reading: reading([0.8], hot),
      rating: { ...disputed([0.7, 0.9]), opens: limit(0.55, 0.05) },
    })
    expect(comparison.run?.verdict).toBe('enough')
  })

  test('a limit that is not on file is a caller’s mistake', () => {
    const none = rating({ closes: limit(0.7, 0.05, { standing: 'Not on file' }) })
    expect(() => compare({ reading: reading([0.9]), rating: none })).toThrow(RangeError)
  })
})

describe('compareReading: higher than expected is never good margin', () => {
  const steady = reading([1.1], { ...hot, lowest: inches(1.09) })
  const baselines = { kind: 'baselines', pascals: [0.8, 0.84].map(inches) } as const

  test('above this furnace’s baselines by more than weather can do: higher, and the inlet side is looked at', () => {
    const comparison = compared({ reading: steady, rating: pair, expected: baselines })
    expect(comparison.higherThanExpected).toBe(true)
    expect(comparison.goodMargin).toBe(false)
    expect(comparison.advice).toContain('look-at-the-inlet-side')
    expect(words({ reading: steady, rating: pair, expected: baselines })).toEqual([
      'Higher than expected',
      'Enough to hold it closed',
    ])
  })

  test('within what weather can do: not higher, and a good margin', () => {
    const comparison = compared({
      reading: reading([0.95], { ...hot, lowest: inches(0.94) }),
      rating: pair,
      expected: baselines,
    })
    expect(comparison.higherThanExpected).toBe(false)
    expect(comparison.goodMargin).toBe(true)
  })

  test('a reported running range serves where there are no baselines', () => {
    const range = {
      kind: 'range',
      lowPascals: inches(0.7),
      highPascals: inches(1),
      source: 'service manual',
    } as const
    expect(compared({ reading: steady, rating: pair, expected: range }).higherThanExpected).toBe(true)
    expect(
      compared({ reading: reading([1.005], hot), rating: pair, expected: range }).higherThanExpected,
    ).toBe(false)
  })

  test('with neither, the answer says that it can’t judge high', () => {
    for (const expected of [undefined, { kind: 'baselines', pascals: [] } as const]) {
      const comparison = compared({ reading: steady, rating: pair, ...(expected && { expected }) })
      expect(comparison.higherThanExpected).toBeUndefined()
      expect(comparison.assumed.join(' ')).toContain('too high can’t be judged')
      expect(comparison.advice).toContain('nothing-to-expect-by')
    }
  })

  test('higher on the vent side is the outlet’s doing', () => {
    const comparison = compared({
      reading: reading([0.7], { ...onRise, contacts: 'closed' }),
      rating: risePair,
      expected: { kind: 'baselines', pascals: [inches(0.3)] },
    })
    expect(comparison.advice).toContain('look-at-the-outlet-side')
    expect(comparison.advice).not.toContain('look-at-the-inlet-side')
  })

  test('a range that runs backwards is a caller’s mistake', () => {
    const backwards = { kind: 'range', lowPascals: 2, highPascals: 1, source: 'manual' } as const
    expect(() => compare({ reading: steady, rating: pair, expected: backwards })).toThrow(RangeError)
  })
})

describe('compareReading: flutter and watching', () => {
  test('a spread of ±0.02 in. w.c. is steady, more is flutter', () => {
    expect(compared({ reading: reading([0.98, 1.02]), rating: pair }).flutter).toBe(false)
    expect(compared({ reading: reading([0.97, 1.02]), rating: pair }).flutter).toBe(true)
    expect(compared({ reading: reading([1], { lowest: inches(0.95) }), rating: pair }).flutter).toBe(true)
  })

  test('samples that straddle the limit are flutter, however close together', () => {
    expect(compared({ reading: reading([0.695, 0.705]), rating: pair }).flutter).toBe(true)
    expect(compared({ reading: reading([0.695, 0.695]), rating: pair }).flutter).toBe(false)
  })

  test('steady takes a minute’s watch', () => {
    const watched = (secondsWatched?: number) =>
      compared({ reading: reading([1], { secondsWatched }), rating: pair }).steady
    expect(watched(60)).toBe('steady')
    expect(watched(59)).toBe('not watched long enough')
    expect(watched()).toBe('not watched long enough')
    expect(compared({ reading: reading([1], { highest: inches(1.2) }), rating: pair }).steady).toBe(
      'fluttering',
    )
  })
})

describe('compareReading: what could settle it', () => {
  const make = rating({ closes: limit(0.7, 0.03) })

  test('when only the scatter stands in the way, so many further separate starts are named', () => {
    // u without repeatability: √(0.0077²/3 + 0.03²/3) = 0.0179; (0.74 − 0.70)/0.0179 = 2.23, settled. With
    // s = 0.03: 0.04/0.0349 = 1.15. Two starts 0.04/0.0278 = 1.44, three 0.04/0.0249 = 1.61, four 0.04/0.0234 = 1.71.
    const start = started({ reading: reading([0.71, 0.77]), rating: make })
    expect(start.verdict).toBe('too close to call')
    expect(start.clearsWorstCase).toBe(true)
    expect(start.moreSamples).toBe(3)
    expect(compared({ reading: reading([0.71, 0.77]), rating: make }).advice).toContain(
      'more-separate-starts',
    )
  })

  test('… and starts already made are counted', () => {
    const start = started({ reading: reading([0.71, 0.77], { separateStarts: true }), rating: make })
    expect(start.budget.repeatability).toBeCloseTo(inches(0.03) / Math.SQRT2, 9)
    expect(start.moreSamples).toBe(2)
  })

  test('when the gauge stands in the way, a finer one is needed', () => {
    const start = started({ reading: reading([0.82]), rating: pair, instrument: coarseGauge })
    expect(start.moreSamples).toBe('a finer manometer is needed')
    expect(compared({ reading: reading([0.82]), rating: pair, instrument: coarseGauge }).advice).toContain(
      'finer-manometer',
    )
  })

  test('when the limit itself is not known well enough, nothing is offered', () => {
    expect(started({ reading: reading([0.71]), rating: pair }).moreSamples).toBeUndefined()
  })

  test('nothing is offered once it is settled, and no number of starts to a hot minimum', () => {
    expect(started({ reading: reading([0.9]), rating: pair }).moreSamples).toBeUndefined()
    const run = ran({
      reading: reading([0.61, 0.75], hot),
      rating: rating({ opens: limit(0.55, 0.03) }),
    })
    expect(run.verdict).toBe('too close to call')
    expect(run.moreSamples).toBeUndefined()
  })

  test('samples of one run are no independent repeats', () => {
    const budget = (separateStarts: boolean) =>
      started({ reading: reading([0.79, 0.8, 0.81, 0.8], { separateStarts }), rating: pair }).budget
        .repeatability
    expect(budget(false)).toBeCloseTo(2 * budget(true), 9)
  })
})

describe('compareReading: advice', () => {
  const advice = (...given: Parameters<typeof compared>) => compared(...given).advice

  test('contacts not read: the first advice is to read them, and nothing is said about the switch', () => {
    for (const value of [0.4, 0.7, 1.2]) {
      const codes = advice({ reading: reading([value], { contacts: 'not read' }), rating: pair })
      expect(codes[0]).toBe('read-contacts-at-the-same-moment')
      expect(codes).not.toContain('open-contact-agrees-leave-it-fitted')
      expect(codes).not.toContain('before-the-switch-is-called-faulty')
      expect(codes).not.toContain('look-past-this-switch')
    }
  })

  test('too low from a cold start and closed: a danger that stands alone', () => {
    expect(advice({ reading: reading([0.5], { contacts: 'closed' }), rating: pair })).toEqual([
      'stop-closed-below-its-rating',
    ])
  })

  test('too low while hot and closed all the time: the same danger; a dip alone asks for the contact at that moment', () => {
    expect(advice({ reading: reading([0.4], hot), rating: pair })).toEqual(['stop-closed-below-its-rating'])
    const dip = advice({ reading: reading([0.9], { ...hot, lowest: inches(0.3) }), rating: pair })
    expect(dip[0]).toBe('read-contacts-at-the-same-moment')
  })

  test('closed below a number of unstated action: from a cold start a danger, hot a question', () => {
    const unstated = rating({ unstated: limit(0.7, 0.05) })
    expect(advice({ reading: reading([0.4], { contacts: 'closed' }), rating: unstated })).toEqual([
      'stop-closed-below-its-rating',
    ])
    expect(advice({ reading: reading([0.4], hot), rating: unstated })).toContain('action-not-stated')
  })

  test('too low and open: leave it fitted, then the air path by tap', () => {
    const path = (changed: Parameters<typeof reading>[1], rated = {}) =>
      advice({
        reading: reading([0.4], changed),
        rating: rating({ closes: limit(0.7, 0.05), ...rated }),
      }).filter((code) => code !== 'nothing-to-expect-by')
    expect(path({})).toEqual([
      'open-contact-agrees-leave-it-fitted',
      'look-at-the-terminals',
      'clear-hose-and-port',
      'check-drain-and-trap',
      'open-the-vent-for-a-moment',
      'look-for-a-leak-before-the-tap',
      'check-inducer-speed-and-volts',
    ])
    const both = path({ kind: 'two-port', between: 'two ports' }, { kind: 'two-port', between: 'two ports' })
    expect(both).toContain('read-each-port-to-the-room')
    expect(both).toContain('open-the-intake-for-a-moment')
    expect(path({ tap: 'not stated' }, { tap: 'not stated' })).toContain('follow-the-hose')
    expect(path({ tap: 'burner box' }, { tap: 'burner box' })).toContain('check-door-and-box-seals')
    expect(path({ tap: 'vent side' }, { tap: 'vent side' })).toContain('check-the-vent-is-whole')
  })

  test('between break and make, closed while running: not by itself a fault', () => {
    const codes = advice({
      reading: reading([0.64], hot),
      rating: rating({ closes: limit(0.75, 0.02), opens: limit(0.55, 0.05) }),
    })
    expect(codes).toContain('closed-between-break-and-make')
    expect(codes.some((code) => code.startsWith('stop-'))).toBe(false)
    expect(advice({ reading: reading([0.9], hot), rating: pair })).not.toContain(
      'closed-between-break-and-make',
    )
  })

  test('between break and make, open: it may have opened for a moment, unless the minimum was held', () => {
    const rated = rating({ closes: limit(0.75, 0.02), opens: limit(0.55, 0.05) })
    const open = { ...hot, contacts: 'open' } as const
    expect(advice({ reading: reading([0.64], open), rating: rated })).toContain('open-between-break-and-make')
    const held = advice({ reading: reading([0.64], { ...open, lowest: inches(0.64) }), rating: rated })
    expect(held).not.toContain('open-between-break-and-make')
    expect(held).toContain('before-the-switch-is-called-faulty')
  })

  test('enough and closed: look past this switch', () => {
    expect(advice({ reading: reading([0.9], { contacts: 'closed' }), rating: pair })).toContain(
      'look-past-this-switch',
    )
  })

  test('a number caught above the limit as it closed: the display may lag, repeat it slowly', () => {
    expect(
      advice({ reading: reading([0.9], { phase: 'at make', contacts: 'closed' }), rating: pair }),
    ).toContain('caught-above-its-limit')
  })

  test('too close to call: the switch stays fitted, contact open or closed', () => {
    for (const contacts of ['open', 'closed'] as const)
      expect(advice({ reading: reading([0.7], { contacts }), rating: pair })).toContain(
        'too-close-leave-it-fitted',
      )
  })

  test('too close to call, hot and open: how to settle it, and the air path in the order of work, as for too low', () => {
    const open = { ...hot, contacts: 'open' } as const
    const close = advice({
      reading: reading([0.62], open),
      rating: rating({ closes: limit(0.7, 0.05), opens: limit(0.55, 0.03) }),
      instrument: coarseGauge,
    })
    expect(close.slice(0, 2)).toEqual(['too-close-leave-it-fitted', 'finer-manometer'])
    const tooLow = advice({ reading: reading([0.3], open), rating: pair })
    const airPath = tooLow.slice(
      tooLow.indexOf('look-at-the-terminals'),
      tooLow.indexOf('check-inducer-speed-and-volts') + 1,
    )
    expect(airPath.length).toBeGreaterThan(4)
    expect(close.slice(2, 2 + airPath.length)).toEqual(airPath)
    expect(close).not.toContain('before-the-switch-is-called-faulty')
  })

  test('too close to call, hot and open: the looks are those of the tap that was read', () => {
    const close = advice({
      reading: reading([0.56], { ...hot, contacts: 'open', tap: 'vent side' }),
      rating: rating({ tap: 'vent side', opens: limit(0.55, 0.03) }),
      instrument: coarseGauge,
    })
    expect(close).toContain('check-the-vent-is-whole')
    expect(close).not.toContain('open-the-vent-for-a-moment')
  })

  test('too close to call of a switch that opens on rise, hot and open: look for what raises the pressure', () => {
    const close = advice({
      reading: reading([0.56], { ...hot, contacts: 'open', kind: 'opens on rise', sense: 'pressure' }),
      rating: rating({ kind: 'opens on rise', sense: 'pressure', opens: limit(0.55, 0.03) }),
      instrument: coarseGauge,
    })
    expect(close.slice(0, 1)).toEqual(['too-close-leave-it-fitted'])
    expect(close).toContain('find-what-raises-the-pressure')
    expect(close).not.toContain('look-at-the-terminals')
  })

  test('too close to call with the contact closed, or cold: nothing is said about the air path', () => {
    for (const state of [{ ...hot, contacts: 'closed' } as const, { contacts: 'open' } as const])
      expect(
        advice({
          reading: reading([0.56], state),
          rating: rating({ closes: limit(0.56, 0.03), opens: limit(0.55, 0.03) }),
          instrument: coarseGauge,
        }),
      ).not.toContain('look-at-the-terminals')
  })

  test('every enough adds that this says nothing about combustion', () => {
    for (const contacts of ['open', 'closed', 'not read'] as const) {
      expect(advice({ reading: reading([0.9], { contacts }), rating: pair })).toContain('test-for-co')
      expect(advice({ reading: reading([0.9], { ...hot, contacts }), rating: pair })).toContain('test-for-co')
    }
    expect(adviceText['test-for-co'].sentence).toBe('This says nothing about combustion: test for CO.')
  })

  test('thin is said to prove no repair', () => {
    const codes = advice({ reading: reading([0.63], hot), rating: pair })
    expect(codes).toContain('thin-no-proof')
    expect(compared({ reading: reading([0.63], hot), rating: pair }).goodMargin).toBe(false)
  })

  test('a gauge past its calibration is shown and not blocked', () => {
    const past = { ...fineGauge, calibrationDue: '2026-01-18' }
    const comparison = compared({ reading: reading([0.9]), rating: pair, instrument: past })
    expect(comparison.start?.verdict).toBe('enough')
    expect(comparison.advice).toContain('calibration-out-of-date')
    expect(comparison.assumed.join(' ')).toContain('ran out on 18 Jan 2026')
    const lastDay = { ...fineGauge, calibrationDue: '2026-01-20' }
    expect(compared({ reading: reading([0.9]), rating: pair, instrument: lastDay }).advice).not.toContain(
      'calibration-out-of-date',
    )
    const none = { ...fineGauge, calibrationDue: undefined }
    expect(compared({ reading: reading([0.9]), rating: pair, instrument: none }).assumed.join(' ')).toContain(
      'No calibration date',
    )
  })

  test('every code has a state and a sentence, and none asks for a jumper or another setting', () => {
    const states = ['power off', 'gas off, inducer only', 'running', 'outside', 'at rest']
    for (const code of adviceCodes) {
      expect(states).toContain(adviceText[code].state)
      expect(adviceText[code].sentence).toMatch(/^[A-Z].*[.?]$/)
      expect(adviceText[code].sentence).not.toMatch(/jumper|adjust|generic|universal|replace the switch/i)
    }
  })

  test('among all advice the switch comes after everything that makes the reading whole, and is never called faulty', () => {
    const at = (code: (typeof adviceCodes)[number]) => adviceCodes.indexOf(code)
    for (const first of [
      'read-contacts-at-the-same-moment',
      'read-with-minimum-hold',
      'watch-for-a-minute',
    ] as const)
      expect(at(first)).toBeLessThan(at('before-the-switch-is-called-faulty'))
    expect(adviceText['before-the-switch-is-called-faulty'].sentence).toContain('what is still missing')
  })
})

describe('compareReading: what it takes for granted is said', () => {
  test('a missing tolerance, a single sample, a gauge whose accuracy nobody stated, a reading beyond its range', () => {
    const comparison = compared({
      reading: reading([0.9]),
      rating: rating({ closes: limit(0.7) }),
      instrument: {
        spanPascals: inches(0.5),
        resolutionPascals: inches(0.01),
        combine: 'plus',
        zeroed: true,
        calibrationDue: '2027-01-01',
      },
    })
    expect(comparison.assumed.join('\n')).toMatch(
      /tolerance is not stated; ± 0\.05 in\. w\.c\. \(12\.5 Pa\).*\n.*One sample.*\n.*half a digit.*\n.*beyond the gauge’s range/,
    )
  })

  test('nothing is assumed that was stated', () => {
    expect(
      compared({
        reading: reading([0.9, 0.9]),
        rating: pair,
        expected: { kind: 'baselines', pascals: [inches(0.9)] },
      }).assumed,
    ).toEqual([])
  })
})

describe('compareReading: a caller’s mistake', () => {
  const good = { reading: reading([0.9]), rating: pair }
  test.each([
    ['no sample', { reading: reading([]) }, 'compareReading requires at least one sample'],
    ['a signed sample', { reading: reading([-0.9]) }, 'its direction in sense'],
    ['a gauge without a span', { instrument: { ...fineGauge, spanPascals: 0 } }, 'span'],
    ['an endless lowest', { reading: reading([1], { lowest: Number.POSITIVE_INFINITY }) }, 'the lowest'],
    ['a negative highest', { reading: reading([1], { highest: -1 }) }, 'the highest'],
    ['a negative watch', { reading: reading([1], { secondsWatched: -1 }) }, 'seconds watched'],
    ['a gauge without a step', { instrument: { ...fineGauge, resolutionPascals: 0 } }, 'resolution'],
    ['a scatter of nothing', { settings: { ...settings, usualScatterPascals: 0 } }, 'usual scatter'],
    ['a negative tolerance', { rating: rating({ closes: limit(0.7, -0.05) }) }, 'limitInterval'],
    ['no calibration day', { instrument: { ...fineGauge, calibrationDue: 'June' } }, 'YYYY-MM-DD'],
    ['no moment', { settings: { ...settings, now: 'today' } }, 'settings.now'],
  ])('%s throws a RangeError that says so', (_, changed, says) => {
    expect(() => compare({ ...good, ...changed })).toThrow(RangeError)
    expect(() => compare({ ...good, ...changed })).toThrow(says)
  })

  test('an endless or missing number among the samples throws too', () => {
    for (const sample of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => compare({ ...good, reading: frozen({ ...reading([1]), samples: [sample] }) })).toThrow(
        RangeError,
      )
  })

  test('a reading of zero is no mistake', () => {
    expect(started({ reading: reading([0]), rating: pair }).verdict).toBe('too low')
  })
})
