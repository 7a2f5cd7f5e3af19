import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findingById, findings } from '@/lib/catalogue/findings'
import {
  type CaseReading,
  findingsFromReadings,
  movements,
  pairedWithinMinutes,
  readingSituationIds,
  readingSituations,
  stepWithinMinutes,
  thresholds,
} from '@/lib/catalogue/fromReadings'
import { toPascals } from '@/lib/core/pressure'
import { betweens, senses, stages, switchKinds, taps } from '@/lib/core/vocabulary'
import { deepFreeze } from '../core/diagnosis/anyDiagnosis'
import { at, caseReading, type Given } from './someReadings'

/** The invented switch closes at 0.70 and opens at 0.55, each ± 0.05 in. w.c. */
const shown = (...given: Given[]) => findingsFromReadings(deepFreeze(given.map(caseReading)))
const well = { inches: [0.86, 0.86] }
const low = { inches: [0.5, 0.5] }
const hot = { phase: 'steady hot' } as const

describe('findingsFromReadings(readings): the furnace as it serves', () => {
  test('no readings show nothing, not even that something is ruled out', () => {
    expect(findingsFromReadings([])).toEqual({})
  })

  test('enough to close it and steady over a minute: beyond make, and no flutter', () => {
    expect(shown(well)).toEqual({
      'reading-at-start': 'beyond make and steady',
      'flutter-near-the-limit': 'ruled out',
    })
  })

  test('enough, but not watched for a minute, is not yet steady', () => {
    expect(shown({ ...well, secondsWatched: 20 })).toEqual({})
  })

  test('too low to close it from the start', () => {
    expect(shown(low)['reading-at-start']).toBe('too low from the start')
  })

  test('too close to call says neither', () => {
    expect(shown({ inches: [0.72, 0.72] })['reading-at-start']).toBeUndefined()
  })

  test('near zero, the inducer running, needs no rating, but a zeroed gauge', () => {
    const nothing = { inches: [0.02], kind: 'two-port', between: 'two ports' } as const
    expect(caseReading(nothing).comparison).toBeUndefined()
    expect(shown(nothing)).toEqual({ 'reading-at-start': 'near zero, inducer running' })
    expect(shown({ ...nothing, zeroed: false })).toEqual({})
    expect(shown({ ...nothing, inches: [0.06] })).toEqual({})
    expect(shown({ ...nothing, between: 'port and room' })).toEqual({})
  })

  test('one bad start outweighs the good ones: what came once may come again', () => {
    expect(shown(well, { ...low, at: at(30) }, { ...well, at: at(60) })['reading-at-start']).toBe(
      'too low from the start',
    )
  })

  test('to and fro within 0.10 in. w.c. of the limit is flutter; far above it, it is not', () => {
    const moving = { inches: [0.7, 0.76], lowestInches: 0.68, highestInches: 0.78 }
    expect(shown(moving)['flutter-near-the-limit']).toBe('seen')
    const farAbove = { inches: [1.2, 1.3], lowestInches: 1.2, highestInches: 1.3 }
    expect(shown(farAbove)['flutter-near-the-limit']).toBeUndefined()
  })

  test('hot and too low to hold: it sags through the break point', () => {
    expect(shown(well, { inches: [0.45], lowestInches: 0.42, ...hot, at: at(8) })['reading-when-hot']).toBe(
      'sags through break',
    )
  })

  test('hot, lower than cold, and enough to hold: it settles above break, which is normal', () => {
    expect(shown(well, { inches: [0.75], lowestInches: 0.74, ...hot, at: at(8) })['reading-when-hot']).toBe(
      'sags, settles above break',
    )
  })

  test('hot and as cold: it holds; between the two nothing is said', () => {
    const hotReading = { ...hot, at: at(8) }
    expect(shown(well, { inches: [0.85], lowestInches: 0.85, ...hotReading })['reading-when-hot']).toBe(
      'holds as cold',
    )
    expect(
      shown(well, { inches: [0.825], lowestInches: 0.825, ...hotReading })['reading-when-hot'],
    ).toBeUndefined()
  })

  test('a reading just after light-off has not settled yet, but may be too low to hold', () => {
    const lit = { phase: 'after light-off', at: at(8) } as const
    expect(shown(well, { inches: [0.75], lowestInches: 0.74, ...lit })['reading-when-hot']).toBeUndefined()
    expect(shown(well, { inches: [0.45], lowestInches: 0.42, ...lit })['reading-when-hot']).toBe(
      'sags through break',
    )
  })

  test('a hot reading alone cannot tell how far it sagged', () => {
    expect(shown({ inches: [0.75], lowestInches: 0.74, ...hot })['reading-when-hot']).toBeUndefined()
  })

  test('contact open while the reading closes it with everything counted; closed rules that out', () => {
    expect(shown({ ...well, contacts: 'open' })['open-beyond-make']).toBe('seen')
    expect(shown({ ...well, contacts: 'closed' })['open-beyond-make']).toBe('ruled out')
    expect(shown({ ...low, contacts: 'open' })['open-beyond-make']).toBeUndefined()
    expect(shown({ inches: [0.755, 0.755], contacts: 'open' })['open-beyond-make']).toBeUndefined()
  })

  test('higher than expected is compareReading’s own answer, and without a baseline there is none', () => {
    const high = { inches: [1.4, 1.4] }
    expect(shown({ ...high, baselineInches: [0.9, 0.92] })['higher-than-expected']).toBe('seen')
    expect(shown({ ...well, baselineInches: [0.9, 0.92] })['higher-than-expected']).toBe('ruled out')
    expect(shown(high)['higher-than-expected']).toBeUndefined()
  })

  test('low fire enough and high fire too low; high fire enough rules it out', () => {
    const lowFire = { ...well, stage: 'low fire' } as const
    const highFire = { ...low, stage: 'high fire' } as const
    const id = 'low-fire-fine-high-fire-too-low'
    expect(shown(lowFire, highFire)[id]).toBe('seen')
    expect(shown(lowFire, { ...well, stage: 'high fire' })[id]).toBe('ruled out')
    expect(shown(highFire)[id]).toBeUndefined()
    expect(shown({ ...lowFire, ...low }, highFire)[id]).toBeUndefined()
  })

  test('the number caught as it closes is passed on the way up: it is no low start and no flutter', () => {
    expect(shown({ ...low, phase: 'at make', contacts: 'closed' })).toEqual({})
    expect(
      shown({ ...low, phase: 'at make' }, { inches: [0.9], situation: 'vent opened', at: at(5) }),
    ).toEqual({})
  })

  test('with the door off nothing is said of the furnace as it serves', () => {
    expect(shown({ ...low, door: 'off' })).toEqual({})
  })

  test('a reading with a sample that is no magnitude says nothing', () => {
    const one = caseReading(well)
    for (const sample of [Number.NaN, Number.POSITIVE_INFINITY, -1])
      expect(findingsFromReadings([{ ...one, reading: { ...one.reading, samples: [200, sample] } }])).toEqual(
        {},
      )
    expect(findingsFromReadings([{ ...one, reading: { ...one.reading, samples: [] } }])).toEqual({})
  })

  test('a switch that opens on rise, a gas-pressure switch and a sensor have none of these signatures', () => {
    for (const kind of ['opens on rise', 'gas pressure', 'sensor'] as const)
      expect(shown({ ...low, kind, movement: 'a beat of one to three seconds' })).toEqual({})
  })
})

describe('findingsFromReadings(readings): what changes when something is done', () => {
  const recovering = [
    ['vent opened', 'recovers-with-vent-opened'],
    ['after draining', 'recovers-after-draining'],
    ['window open', 'recovers-with-window-open'],
    ['intake off', 'recovers-with-intake-off'],
  ] as const

  test.each(recovering)(
    '%s: a rise of 0.05 in. w.c. from too low is a recovery, none within 0.02 rules it out',
    (situation, id) => {
      const withIt = (inches: number) => shown(low, { inches: [inches], situation, at: at(10) })[id]
      expect(withIt(0.8)).toBe('seen')
      expect(withIt(0.55)).toBe('seen')
      expect(withIt(0.53)).toBeUndefined()
      expect(withIt(0.52)).toBe('ruled out')
      expect(withIt(0.4)).toBe('ruled out')
    },
  )

  test.each(recovering)('%s: nothing can recover from a reading that was enough', (situation, id) => {
    expect(shown(well, { inches: [1.2], situation, at: at(10) })[id]).toBeUndefined()
  })

  test('higher than expected and lower with the intake off: the intake held the air back', () => {
    const id = 'recovers-with-intake-off'
    const high = { inches: [1.4], baselineInches: [0.9, 0.92] }
    const off = (inches: number) =>
      shown(high, { inches: [inches], baselineInches: [0.9, 0.92], situation: 'intake off', at: at(5) })[id]
    expect(off(0.95)).toBe('seen')
    expect(off(1.39)).toBe('ruled out')
    expect(off(1.3)).toBeUndefined()
  })

  test('the reading it is held against is of the same place, and no longer than two hours away', () => {
    const id = 'recovers-with-vent-opened'
    const opened = { inches: [0.8], situation: 'vent opened', at: at(10) } as const
    expect(pairedWithinMinutes).toBe(120)
    expect(shown(low, { ...opened, at: at(120) })[id]).toBe('seen')
    expect(shown(low, { ...opened, at: at(121) })[id]).toBeUndefined()
    expect(shown({ ...low, stage: 'low fire' }, opened)[id]).toBeUndefined()
    expect(shown({ ...low, tap: 'collector box' }, opened)[id]).toBeUndefined()
    expect(shown({ ...low, ...hot }, opened)[id]).toBeUndefined()
  })

  test('the nearest reading counts; of two equally near both have to agree', () => {
    const id = 'recovers-with-vent-opened'
    const opened = { inches: [0.6], situation: 'vent opened', at: at(10) } as const
    const earlier = { inches: [0.3], at: at(0) }
    expect(shown(earlier, { inches: [0.59], at: at(9) }, opened)[id]).toBe('ruled out')
    expect(shown(earlier, { inches: [0.59], at: at(20) }, opened)[id]).toBeUndefined()
  })

  test('a step down as the air blower starts, in the same phase of the same run; a step up is none', () => {
    const id = 'step-at-blower-start'
    const lit = { phase: 'after light-off', lowestInches: 0.7 } as const
    const before = { inches: [0.8], ...lit, at: at(0) }
    const started = (inches: number, minutes = 1, more: Partial<Given> = {}) =>
      shown(before, {
        inches: [inches],
        ...lit,
        lowestInches: inches,
        situation: 'air blower just started',
        at: at(minutes),
        ...more,
      })[id]
    expect(stepWithinMinutes).toBe(10)
    expect(started(0.7)).toBe('seen')
    expect(started(0.79)).toBe('ruled out')
    expect(started(0.9)).toBe('ruled out')
    expect(started(0.77)).toBeUndefined()
    expect(started(0.7, 11)).toBeUndefined()
    expect(started(0.7, -1)).toBeUndefined()
    expect(started(0.7, 1, { door: 'off' })).toBeUndefined()
    expect(started(0.7, 1, { phase: 'steady hot' })).toBeUndefined()
    expect(
      shown(
        { ...well, at: at(0) },
        { inches: [0.7], ...lit, situation: 'air blower just started', at: at(1) },
      )[id],
    ).toBeUndefined()
  })

  test('door off: higher, lower or no change; both ways in one case say nothing', () => {
    const id = 'reading-with-door-off'
    const doorOff = (inches: number, minutes = 5): Given => ({
      inches: [inches],
      door: 'off',
      at: at(minutes),
    })
    expect(shown(low, doorOff(0.6))[id]).toBe('higher')
    expect(shown(low, doorOff(0.4))[id]).toBe('lower')
    expect(shown(low, doorOff(0.51))[id]).toBe('no change')
    expect(shown(low, doorOff(0.53))[id]).toBeUndefined()
    expect(shown(low, doorOff(0.6), doorOff(0.4, 6))[id]).toBeUndefined()
    expect(shown(doorOff(0.6))[id]).toBeUndefined()
  })
})

describe('findingsFromReadings(readings): moving and resting', () => {
  test('at rest 0.03 in. w.c. or more is held somewhere; up to 0.01 is zero', () => {
    const rest = { phase: 'rest' } as const
    const id = 'no-return-to-zero'
    expect(shown({ ...rest, inches: [0.1] })[id]).toBe('seen')
    expect(shown({ ...rest, inches: [0.03] })[id]).toBe('seen')
    expect(shown({ ...rest, inches: [0.02] })[id]).toBeUndefined()
    expect(shown({ ...rest, inches: [0.01] })[id]).toBe('ruled out')
    expect(shown({ ...rest, inches: [0.1], zeroed: false })[id]).toBeUndefined()
    expect(shown({ ...rest, inches: [0], situation: 'after draining' })[id]).toBeUndefined()
    expect(shown({ ...rest, inches: [0.1] }, { ...rest, inches: [0], at: at(30) })[id]).toBe('seen')
  })

  test('a beat that was seen on the display is a regular pulse; another movement rules it out; none said, nothing', () => {
    expect(shown({ ...low, movement: 'a beat of one to three seconds' })['regular-pulse']).toBe('seen')
    for (const movement of movements.filter((one) => one !== 'a beat of one to three seconds'))
      expect(shown({ ...low, movement })['regular-pulse']).toBe('ruled out')
    expect(shown(low)['regular-pulse']).toBeUndefined()
  })

  test('it moves with the gusts when it was seen to, or spreads by 0.05 in. w.c. more than in a calm', () => {
    const id = 'moves-with-gusts'
    const windy = (lowestInches: number): Given => ({
      inches: [0.8],
      lowestInches,
      highestInches: 0.82,
      situation: 'in gusts',
      at: at(0),
    })
    const calm: Given = {
      inches: [0.8],
      lowestInches: 0.79,
      highestInches: 0.81,
      situation: 'calm',
      at: at(2000),
    }
    expect(shown({ ...low, movement: 'with the gusts' })[id]).toBe('seen')
    expect(shown(windy(0.6), calm)[id]).toBe('seen')
    expect(shown(windy(0.79), calm)[id]).toBe('ruled out')
    expect(shown(windy(0.76), calm)[id]).toBeUndefined()
    expect(shown(windy(0.6))[id]).toBeUndefined()
  })

  test('both ports nearer zero, both farther, or as expected; one each way says nothing', () => {
    const port = (
      situation: 'first port to the room' | 'second port to the room',
      inches: number,
    ): Given => ({
      inches: [inches],
      kind: 'two-port',
      situation,
      expectedInches: 1,
    })
    const both = (first: number, second: number) =>
      shown(port('first port to the room', first), port('second port to the room', second))
    expect(both(0.8, 0.7)).toEqual({ 'ports-to-the-room': 'both nearer zero' })
    expect(both(1.2, 1.1)).toEqual({ 'ports-to-the-room': 'both farther from zero' })
    expect(both(1.02, 0.98)).toEqual({ 'ports-to-the-room': 'as expected' })
    expect(both(0.8, 1.2)).toEqual({})
    expect(shown(port('first port to the room', 0.8))).toEqual({})
    const onePort = { kind: 'one-port' } as const
    expect(
      shown(
        { ...port('first port to the room', 0.8), ...onePort },
        { ...port('second port to the room', 0.7), ...onePort },
      )['ports-to-the-room'],
    ).toBeUndefined()
    const { expectedInches: _, ...noExpectation } = port('second port to the room', 0.7)
    expect(shown(port('first port to the room', 0.8), noExpectation)).toEqual({})
  })
})

/** Any readings at all, sensible or not, with comparisons that compareReading would never give them. */
const anyReading: fc.Arbitrary<CaseReading> = fc
  .record({
    at: fc.oneof(
      fc.integer({ min: 0, max: 3 }).map((minutes) => at(minutes * 4)),
      fc.string(),
    ),
    inches: fc.array(fc.double({ min: 0, max: 2, noNaN: true }), { minLength: 1, maxLength: 3 }),
    strange: fc.option(fc.double(), { nil: undefined }),
    kind: fc.constantFrom(...switchKinds),
    between: fc.constantFrom(...betweens),
    tap: fc.constantFrom(...taps),
    stage: fc.constantFrom(...stages),
    sense: fc.constantFrom(...senses),
    door: fc.constantFrom('on' as const, 'off' as const),
    phase: fc.constantFrom('rest', 'pre-purge', 'at make', 'after light-off', 'steady hot'),
    contacts: fc.constantFrom('open', 'closed', 'not read'),
    situation: fc.constantFrom(...readingSituationIds),
    movement: fc.option(fc.constantFrom(...movements), { nil: undefined }),
    zeroed: fc.boolean(),
    expectedInches: fc.option(fc.double({ min: 0, max: 2, noNaN: true }), { nil: undefined }),
    baselineInches: fc.option(fc.constant([0.9, 0.92]), { nil: undefined }),
  })
  .map(({ strange, movement, expectedInches, baselineInches, ...given }) => {
    const one = caseReading({
      ...(given as Given),
      ...(movement && { movement }),
      ...(expectedInches !== undefined && { expectedInches }),
      ...(baselineInches && { baselineInches }),
    })
    return strange === undefined
      ? one
      : { ...one, reading: { ...one.reading, samples: [...one.reading.samples, strange] } }
  })

/** Plain readings of one switch, close together in time, so that pairs are found and ties are frequent. */
const plainReading: fc.Arbitrary<CaseReading> = fc
  .record({
    at: fc.integer({ min: 0, max: 2 }).map((minutes) => at(minutes * 4)),
    inches: fc.array(
      fc.integer({ min: 0, max: 30 }).map((steps) => steps * 0.05),
      {
        minLength: 1,
        maxLength: 2,
      },
    ),
    door: fc.constantFrom('on' as const, 'on' as const, 'off' as const),
    phase: fc.constantFrom('rest' as const, 'pre-purge' as const, 'after light-off' as const),
    situation: fc.constantFrom(...readingSituationIds),
  })
  .map(caseReading)

const seeded = { seed: 20310110, numRuns: 300 }

describe('findingsFromReadings(readings): any readings', () => {
  test('never throws, changes nothing it is given, and says only what the catalogue asks from readings', () => {
    fc.assert(
      fc.property(fc.array(anyReading, { maxLength: 6 }), (readings) => {
        for (const [id, value] of Object.entries(findingsFromReadings(deepFreeze(readings)))) {
          expect(findingById(id)?.asked).toBe('from readings')
          expect(findingById(id)?.values).toContain(value)
        }
      }),
      seeded,
    )
  })

  test('the order does not matter, of readings at the same moment either', () => {
    fc.assert(
      fc.property(
        fc
          .array(plainReading, { minLength: 2, maxLength: 6 })
          .chain((readings) =>
            fc.tuple(fc.constant(readings), fc.shuffledSubarray(readings, { minLength: readings.length })),
          ),
        ([readings, shuffled]) => {
          expect(findingsFromReadings(shuffled)).toEqual(findingsFromReadings(readings))
        },
      ),
      seeded,
    )
  })

  test('every finding that is asked from readings can be drawn from some', () => {
    const drawn = new Set<string>()
    const port = { kind: 'two-port', expectedInches: 1, inches: [0.5] } as const
    const examples = [
      [well, { inches: [0.75], lowestInches: 0.74, ...hot, at: at(8) }],
      [{ ...well, contacts: 'open', baselineInches: [0.9], movement: 'with the gusts' }],
      [{ inches: [0.1], phase: 'rest' }],
      [low, { ...low, door: 'off' }],
      ...(['vent opened', 'intake off', 'after draining', 'window open'] as const).map((situation) => [
        low,
        { ...well, situation },
      ]),
      [well, { ...low, situation: 'air blower just started' }],
      [
        { ...well, stage: 'low fire' },
        { ...low, stage: 'high fire' },
      ],
      [
        { ...port, situation: 'first port to the room' },
        { ...port, situation: 'second port to the room' },
      ],
    ] as Given[][]
    for (const example of examples) for (const id of Object.keys(shown(...example))) drawn.add(id)
    expect(
      findings
        .filter(({ asked }) => asked === 'from readings')
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual([...drawn].toSorted())
  })
})

describe('thresholds and situations', () => {
  test('are the inches of water column that the trade goes by', () => {
    const inInches = Object.fromEntries(
      Object.entries(thresholds).map(([name, pascals]) => [name, pascals / toPascals(1, 'inH2O')]),
    )
    for (const [name, inches] of Object.entries({
      marginal: 0.1,
      nearZero: 0.05,
      heldAtRest: 0.03,
      restZero: 0.01,
      change: 0.05,
      noChange: 0.02,
    }))
      expect(inInches[name], name).toBeCloseTo(inches, 12)
  })

  test('every situation has words and a state; what opens the gas path is done with the gas off', () => {
    for (const id of readingSituationIds) expect(readingSituations[id].words.length).toBeGreaterThan(3)
    for (const id of ['vent opened', 'intake off'] as const) {
      expect(readingSituations[id].state).toBe('gas off, inducer only')
      expect(readingSituations[id].putBack).toBeDefined()
    }
  })
})
