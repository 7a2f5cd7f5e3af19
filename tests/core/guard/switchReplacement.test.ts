import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type CaseState,
  lookNames,
  type Requirement,
  requirementText,
  switchReplacement,
} from '@/lib/core/guard'
import { compared, fineGauge, limit, rating, reading } from '../reading/made'
import { bare, clearing, complete, inches } from './made'

const missing = (state: CaseState): Requirement[] => switchReplacement(state).missing

// The conditions are common practice, no published source.
describe('switchReplacement(caseState): a switch that will not close', () => {
  test('with every condition on record it is advised, and the exact factory part is named through its supersessions', () => {
    expect(switchReplacement(complete())).toEqual({
      advised: true,
      missing: [],
      faultsFound: [],
      orderPart: 'QV-3402',
      through: ['QV-3310', 'QV-3355', 'QV-3402'],
      setting: 'as before',
    })
  })

  test('labelled make 0.94, 1.10 measured, contact open, nothing else on record: what is missing is listed in order', () => {
    const state = { ...bare('will not close'), reading: { comparison: clearing(), byTeeAtTheSwitch: true } }
    expect(switchReplacement(state)).toEqual({
      advised: false,
      missing: [
        'termination-clear',
        'intake-clear',
        'vent-slope-and-water-clear',
        'drain-and-trap-clear',
        'hose-clear',
        'port-clear',
        'inducer-sound-and-volts-right',
        'wiring-sound',
        'fitted-part-recorded',
        'factory-part-named',
        'part-number-right',
        'rating-trusted',
        'rating-action-stated',
        'rating-holds-here',
        'gauge-zeroed',
        'gauge-uncertainty-known',
        'gauge-in-calibration',
      ],
      faultsFound: [],
    })
  })

  test('labelled make 0.94, 0.80 measured, contact open: never advised, whatever else is on record', () => {
    const state = complete({ reading: { comparison: clearing({}, 0.8), byTeeAtTheSwitch: true } })
    expect(missing(state)).toContain('reading-clears-the-limit')
    expect(switchReplacement(state).advised).toBe(false)
  })

  test.each(lookNames.map((name) => [name]))(
    'the switch comes last: not advised while %s is unchecked',
    (name) => {
      const state = complete()
      const unchecked = switchReplacement({ ...state, looks: { ...state.looks, [name]: 'not checked' } })
      expect(unchecked.advised).toBe(false)
      expect(unchecked.missing).toHaveLength(1)
      expect(unchecked.faultsFound).toEqual([])
      const faulty = switchReplacement({ ...state, looks: { ...state.looks, [name]: 'fault found' } })
      expect(faulty.advised).toBe(false)
      expect(faulty.faultsFound).toEqual(unchecked.missing)
    },
  )

  const verified = { level: 'Verified', action: 'closes', sources: [], stageAndElevation: 'right' } as const
  const gauge = { zeroed: true, uncertaintyKnown: true, calibration: 'current' } as const
  const cases: [string, Partial<CaseState>, Requirement[]][] = [
    ['no rating', { rating: undefined }, ['rating-trusted', 'rating-action-stated', 'rating-holds-here']],
    ['an Unverified rating', { rating: { ...verified, level: 'Unverified' } }, ['rating-trusted']],
    [
      'a rating Supported by a label and a distributor',
      { rating: { ...verified, level: 'Supported', sources: ['factory switch label', 'distributor'] } },
      ['rating-trusted'],
    ],
    [
      'a rating Supported by older literature',
      { rating: { ...verified, level: 'Supported', sources: ['older literature'] } },
      ['rating-trusted'],
    ],
    [
      'a rating In dispute',
      { rating: { ...verified, level: 'In dispute' } },
      ['rating-trusted', 'rating-not-in-dispute'],
    ],
    [
      'a number of unstated action',
      { rating: { ...verified, action: 'not stated' } },
      ['rating-action-stated'],
    ],
    ['the opening point', { rating: { ...verified, action: 'opens' } }, ['rating-action-stated']],
    [
      'another stage or elevation',
      { rating: { ...verified, stageAndElevation: 'wrong' } },
      ['rating-holds-here'],
    ],
    [
      'stage and elevation unchecked',
      { rating: { ...verified, stageAndElevation: 'not checked' } },
      ['rating-holds-here'],
    ],
    ['a gauge that was not zeroed', { gauge: { ...gauge, zeroed: false } }, ['gauge-zeroed']],
    [
      'a gauge of unknown uncertainty',
      { gauge: { ...gauge, uncertaintyKnown: false } },
      ['gauge-uncertainty-known'],
    ],
    ['a gauge past its calibration', { gauge: { ...gauge, calibration: 'past' } }, ['gauge-in-calibration']],
    [
      'a gauge of unknown calibration',
      { gauge: { ...gauge, calibration: 'not known' } },
      ['gauge-in-calibration'],
    ],
    [
      'no reading',
      { reading: undefined },
      [
        'reading-at-the-switch',
        'reading-between-rated-points',
        'reading-clears-the-limit',
        'reading-steady',
        'contact-open-at-that-moment',
      ],
    ],
    [
      'a reading taken elsewhere',
      { reading: { comparison: clearing(), byTeeAtTheSwitch: false } },
      ['reading-at-the-switch'],
    ],
    [
      'a reading watched for 59 seconds',
      { reading: { comparison: clearing({ secondsWatched: 59 }), byTeeAtTheSwitch: true } },
      ['reading-steady'],
    ],
    [
      'a fluttering reading',
      { reading: { comparison: clearing({ lowest: inches(1.05) }), byTeeAtTheSwitch: true } },
      ['reading-steady'],
    ],
    [
      'a contact that was not read',
      { reading: { comparison: clearing({ contacts: 'not read' }), byTeeAtTheSwitch: true } },
      ['contact-open-at-that-moment'],
    ],
    [
      'a closed contact',
      { reading: { comparison: clearing({ contacts: 'closed' }), byTeeAtTheSwitch: true } },
      ['contact-open-at-that-moment'],
    ],
    [
      'a rating that does not say between which points',
      {
        reading: {
          comparison: compared({
            reading: reading([1.1]),
            rating: rating({ closes: limit(0.94, 0.05), between: 'not stated' }),
          }),
          byTeeAtTheSwitch: true,
        },
      },
      ['reading-between-rated-points'],
    ],
    [
      'a reading held against the opening point only',
      {
        reading: {
          comparison: compared({ reading: reading([1.1]), rating: rating({ opens: limit(0.8, 0.05) }) }),
          byTeeAtTheSwitch: true,
        },
      },
      ['reading-clears-the-limit'],
    ],
    [
      'no factory number',
      { part: { fitted: 'QV-3310', supersessions: [] } },
      ['factory-part-named', 'part-number-right'],
    ],
    [
      'a factory number from a parts listing',
      {
        part: {
          fitted: 'QV-3310',
          factory: { partNumber: 'QV-3310', listedBy: 'parts listing', listedWhere: 'catalogue' },
          supersessions: [],
        },
      },
      ['factory-part-named'],
    ],
    [
      'another part fitted',
      {
        part: {
          fitted: 'ZZ-1',
          factory: { partNumber: 'QV-3310', listedBy: 'factory support', listedWhere: 'call 881' },
          supersessions: [],
        },
      },
      ['part-number-right'],
    ],
  ]
  test.each(cases)('not advised with %s', (_, changed, expected) => {
    const answer = switchReplacement(complete(changed))
    expect(answer.advised).toBe(false)
    expect(answer.orderPart).toBeUndefined()
    expect(answer.missing).toEqual(expected)
  })

  test.each(['current literature', 'factory support'] as const)(
    'advised with a rating Supported by %s',
    (source) => {
      expect(
        switchReplacement(complete({ rating: { ...verified, level: 'Supported', sources: [source] } }))
          .advised,
      ).toBe(true)
    },
  )

  test('the fitted part may be an older or a newer number of the factory part', () => {
    const state = complete()
    for (const fitted of ['QV-3310', 'QV-3402'])
      expect(
        switchReplacement({
          ...state,
          part: {
            ...state.part,
            fitted,
            factory: { partNumber: 'QV-3355', listedBy: 'factory support', listedWhere: 'call 881' },
          },
        }).advised,
      ).toBe(true)
  })

  test('never advised while anything is missing: any set of gaps in the record bars it', () => {
    const gaps: ((state: CaseState) => CaseState)[] = [
      ...lookNames.map(
        (name) =>
          (state: CaseState): CaseState => ({
            ...state,
            looks: { ...state.looks, [name]: 'not checked' },
          }),
      ),
      ...cases.map(
        ([, changed]) =>
          (state: CaseState): CaseState => ({ ...state, ...changed }),
      ),
    ]
    fc.assert(
      fc.property(fc.subarray(gaps, { minLength: 1 }), (chosen) => {
        const answer = switchReplacement(chosen.reduce((state, gap) => gap(state), complete()))
        expect(answer.advised).toBe(false)
        expect(answer.missing.length).toBeGreaterThan(0)
        expect(answer.orderPart).toBeUndefined()
      }),
      { seed: 20260120, numRuns: 200 },
    )
  })
})

describe('switchReplacement(caseState): near the limit the switch is checked off the furnace', () => {
  // Limit 0.94 + 0.05 = 0.99; within 0.10 of it is up to 1.09.
  const near = (offFurnace?: CaseState['offFurnace']) =>
    missing(
      complete({
        reading: { comparison: clearing({}, 1.08), byTeeAtTheSwitch: true },
        ...(offFurnace && { offFurnace }),
      }),
    )
  const pump = {
    gaugeHalfWidthPascals: inches(0.01),
    heldForTenSeconds: 'held',
    pumpLineProvenTight: true,
  } as const

  test('0.09 beyond the limit: the check is asked for; 0.11 beyond: it is not', () => {
    expect(near()).toEqual(['off-furnace-check'])
    expect(missing(complete())).toEqual([])
  })

  test('three pulls above the limit by more than the gauge speak against the switch', () => {
    expect(near({ ...pump, pulls: [inches(1.1), inches(1.12), 'did not close'] })).toEqual([])
  })

  test('two pulls are not three, and one in tolerance acquits it', () => {
    expect(near({ ...pump, pulls: [inches(1.1), inches(1.12)] })).toEqual(['off-furnace-check'])
    expect(near({ ...pump, pulls: [inches(1.1), inches(0.97), inches(1.12)] })).toEqual(['off-furnace-check'])
    expect(near({ ...pump, pulls: [inches(0.995), inches(1.1), inches(1.12)] })).toEqual([
      'off-furnace-check',
    ])
  })

  test('leaking down within ten seconds speaks against it, with the pump line proven tight', () => {
    expect(near({ ...pump, pulls: [], heldForTenSeconds: 'leaked down' })).toEqual([])
    expect(
      near({ ...pump, pulls: [], heldForTenSeconds: 'leaked down', pumpLineProvenTight: false }),
    ).toEqual(['off-furnace-check'])
  })

  test('a check that was made and finds the switch in tolerance bars the advice at any distance', () => {
    expect(
      missing(complete({ offFurnace: { ...pump, pulls: [inches(0.93), inches(0.94), inches(0.95)] } })),
    ).toEqual(['off-furnace-check'])
  })
})

describe('switchReplacement(caseState): a switch that opens early', () => {
  const opensAt = { level: 'Verified', action: 'opens', sources: [], stageAndElevation: 'right' } as const
  const hot = (changed: Parameters<typeof reading>[1]) =>
    compared({
      reading: reading([0.8], { phase: 'steady hot', lowest: inches(0.79), ...changed }),
      rating: rating({ closes: limit(0.7, 0.05), opens: limit(0.55, 0.05) }),
    })
  const state = (comparison: CaseState['reading']) =>
    complete({ complaint: 'opens early', rating: opensAt, reading: comparison })

  test('the recorded minimum clears the opening point and the contact was open: advised without a minute’s watch', () => {
    const comparison = hot({ secondsWatched: undefined })
    expect(comparison.steady).toBe('not watched long enough')
    expect(missing(state({ comparison, byTeeAtTheSwitch: true }))).toEqual([])
  })

  test('an average with no held minimum is no proof', () => {
    const comparison = hot({ averaging: true, lowest: undefined })
    expect(missing(state({ comparison, byTeeAtTheSwitch: true }))).toContain('reading-clears-the-limit')
  })

  test('a single fluttering value is no proof', () => {
    const comparison = hot({ lowest: inches(0.74) })
    expect(missing(state({ comparison, byTeeAtTheSwitch: true }))).toContain('reading-steady')
  })
})

describe('switchReplacement(caseState): short lists', () => {
  const part = complete().part
  const atRest = { inducerStopped: true, hoseOff: true, wiresOff: true, contact: 'closed' } as const

  test('one that will not open: at rest, hose off, wires off, still closed; one observation is enough', () => {
    expect(switchReplacement({ ...bare('will not open'), part, atRest })).toMatchObject({
      advised: true,
      orderPart: 'QV-3402',
    })
    expect(missing(bare('will not open'))).toEqual([
      'inducer-stopped',
      'hose-off',
      'wires-off',
      'contact-still-closed',
      'factory-part-named',
    ])
  })

  test('one that will not open, with suction left in the hose or the wires on: not advised', () => {
    expect(missing({ ...bare('will not open'), part, atRest: { ...atRest, hoseOff: false } })).toEqual([
      'hose-off',
    ])
    expect(missing({ ...bare('will not open'), part, atRest: { ...atRest, wiresOff: false } })).toEqual([
      'wires-off',
    ])
    expect(missing({ ...bare('will not open'), part, atRest: { ...atRest, contact: 'not read' } })).toEqual([
      'contact-still-closed',
    ])
  })

  test('one that opens on rise is closed at rest: it will not open only if it stays closed above its point', () => {
    const onRise = {
      ...bare('will not open'),
      kind: 'opens on rise',
      part,
      atRest,
    } as const satisfies CaseState
    expect(missing(onRise)).toEqual(['reading-at-the-switch', 'contact-closed-above-opening-point'])
    const comparison = compared({
      reading: reading([1.3], {
        kind: 'opens on rise',
        sense: 'pressure',
        tap: 'vent side',
        contacts: 'closed',
      }),
      rating: rating({ kind: 'opens on rise', sense: 'pressure', tap: 'vent side', opens: limit(1, 0.05) }),
      instrument: fineGauge,
    })
    expect(switchReplacement({ ...onRise, reading: { comparison, byTeeAtTheSwitch: true } }).advised).toBe(
      true,
    )
  })

  const drop = { volts: [0.8, 0.7, 0.9], underLoad: true, terminals: 'clear', contact: 'closed' } as const
  const closed = { comparison: clearing({ contacts: 'closed' }), byTeeAtTheSwitch: true }

  test('one that drops voltage when closed: beyond make, above 0.5 V under load, terminals clean, repeated twice', () => {
    const state = { ...bare('drops voltage when closed'), part, reading: closed, drop }
    expect(switchReplacement(state)).toMatchObject({ advised: true, orderPart: 'QV-3402' })
    expect(missing({ ...state, drop: { ...drop, volts: [0.8, 0.5, 0.9] } })).toEqual(['drop-under-load'])
    expect(missing({ ...state, drop: { ...drop, volts: [0.8, 0.9] } })).toEqual(['drop-repeated'])
    expect(missing({ ...state, drop: { ...drop, underLoad: false } })).toEqual(['drop-under-load'])
    expect(missing({ ...state, drop: { ...drop, terminals: 'not checked' } })).toEqual(['terminals-clean'])
    expect(missing({ ...state, reading: { comparison: clearing(), byTeeAtTheSwitch: true } })).toEqual([
      'reading-well-beyond-make',
    ])
  })

  test('one that drops voltage, nothing on record: the whole list', () => {
    expect(missing(bare('drops voltage when closed'))).toEqual([
      'contact-closed',
      'reading-well-beyond-make',
      'drop-under-load',
      'terminals-clean',
      'drop-repeated',
      'factory-part-named',
    ])
  })

  test('a wrong part is replaced as the wrong part, not as faulty', () => {
    const wrong = { ...bare('wrong part fitted'), part: { ...part, fitted: 'ZZ-1' } }
    expect(switchReplacement(wrong)).toMatchObject({ advised: true, orderPart: 'QV-3402' })
    expect(missing({ ...wrong, part })).toEqual(['part-number-wrong'])
    expect(missing(bare('wrong part fitted'))).toEqual([
      'fitted-part-recorded',
      'factory-part-named',
      'part-number-wrong',
    ])
  })

  test('when two numbers replace the factory part, that is settled before one is ordered', () => {
    const forked = {
      ...part,
      supersessions: [...part.supersessions, { from: 'QV-3355', to: 'QV-3403', setting: 'changed' } as const],
    }
    const answer = switchReplacement(complete({ part: forked }))
    expect(answer.missing).toEqual(['supersession-settled'])
    expect(answer.advised).toBe(false)
  })
})

test('every requirement is a sentence that says what has to be on record, and none names a bypass or a generic part', () => {
  for (const text of Object.values(requirementText)) {
    expect(text).toMatch(/^[A-Z].*\.$/)
    expect(text).not.toMatch(/jumper|bypass|generic|universal|adjust/i)
  }
})
