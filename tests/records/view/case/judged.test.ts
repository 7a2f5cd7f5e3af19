import { describe, expect, test } from 'vitest'
import { ratingFor } from '@/lib/core/rating'
import { verdictWords } from '@/lib/core/reading'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { readingBody } from '@/lib/records/kinds/reading'
import { expectedAt } from '@/lib/records/view/case/expectedAt'
import type { JudgedReading } from '@/lib/records/view/case/judgedReading'
import { ratingThen } from '@/lib/records/view/case/judgedReading'
import { limitsNow } from '@/lib/records/view/case/limitsNow'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { ratingForComparison } from '@/lib/records/view/ratingForComparison'
import { ratingAt, ratingSettings } from '@/lib/records/view/setpoint'
import { at, hot, ids, inches, ofVisit, opened, reading, said, team, viewOf, withdrawn } from './team'

const now = at(20)
const words = ({ comparison }: JudgedReading) => verdictWords(comparison)
const then = (...records: HeldRecord[]) => viewOf(team(opened, records)).judged.map(words)
const today = (...records: HeldRecord[]) => viewOf(team(opened, records), now).judged.map(words)

/** A report that the maker's line took back what it had said: closes at 0.85. */
const contradicting = said(
  'report',
  {
    positionId: ids.low,
    asWritten: 'closes at .85',
    action: 'closes',
    limit: 'nominal',
    pascals: inches(0.85),
    toleranceAbove: inches(0.05),
    toleranceBelow: inches(0.05),
    sense: 'suction',
    unit: 'inH2O',
    decimals: 2,
    kind: 'one-port',
    between: 'port and room',
    tap: 'collector box',
    stage: 'low fire',
    revisionRange: {},
    serialRange: {},
    elevationBand: {},
    source: 'data plate',
    proof: { kind: 'document', name: 'Data plate', page: '1' },
  },
  { at: at(15) },
)

describe('judgedThen and judgedNow', () => {
  const taken = reading(0.7, { contacts: 'closed' })

  test('agree while nothing new has been said', () => {
    expect(then(taken)).toEqual([['Enough to close it']])
    expect(today(taken)).toEqual([['Enough to close it']])
  })

  test('a later dispute changes what the reading means now, and not what it meant then', () => {
    expect(then(taken, contradicting)).toEqual([['Enough to close it']])
    expect(today(taken, contradicting)).toEqual([['Settle the rating first']])
  })

  test('a report withdrawn since does the same', () => {
    const saying = ids.lowCloses
    const gone = said('withdrawal', { record: saying, reason: 'Of another model.' }, { at: at(15) })
    const standingOf = (view: JudgedReading) => view.comparison.ok && view.comparison.value.standing
    const file = team(opened, taken, gone)
    expect(viewOf(file).judged.map(standingOf)).toEqual(['Verified'])
    expect(viewOf(file, now).judged.map(standingOf)).toEqual(['Supported'])
  })

  test('with no rating written down nothing was judged then, and what is known now judges it now', () => {
    const bare = reading(0.7, { contacts: 'closed', against: undefined })
    expect(then(bare)).toEqual([["Can't be compared"]])
    expect(today(bare)).toEqual([['Enough to close it']])
  })

  test('a reading between other points, on another stage or at another tap could not be compared then either', () => {
    for (const more of [
      { stage: 'high fire' },
      { between: 'port and cabinet' },
      { tap: 'inducer inlet' },
      { sense: 'pressure' },
    ]) {
      expect([more, then(reading(0.9, more))]).toEqual([more, [["Can't be compared"]]])
      expect([more, today(reading(0.9, more))]).toEqual([more, [["Can't be compared"]]])
    }
  })

  test('what the sources had left open about the points is taken from the record of the position', () => {
    const open = (taken.body.against as Record<string, unknown>[]).map(
      ({ between, tap, stage, sense, kind, ...limit }) => limit,
    )
    expect(then(reading(0.9, { against: open }))).toEqual([['Enough to close it']])
    expect(then(reading(0.9, { against: open, stage: 'high fire' }))).toEqual([["Can't be compared"]])
  })

  test('a gauge past its calibration on the day is past it for ever, one that ran out since is not', () => {
    const gauge = (due: string) =>
      said('gauge', {
        name: 'G-09',
        unit: 'Pa',
        percentOfReading: 1,
        combine: 'plus',
        spanPascals: 2000,
        resolutionPascals: 0.1,
        calibrationDue: due,
      })
    const past = (due: string): boolean => {
      const its = gauge(due)
      const [one] = viewOf(
        team(opened, its, reading(0.7, { contacts: 'closed', gaugeId: its.id })),
        '2030-01-01T00:00:00Z',
      ).judged
      return one!.comparison.ok && one!.comparison.value.advice.includes('calibration-out-of-date')
    }
    expect(past('2026-01-10')).toBe(true)
    expect(past('2026-02-10')).toBe(false)
  })

  test('without its gauge a reading is held against nothing, and says so', () => {
    const [one] = viewOf(team(opened, reading(0.7, { gaugeId: undefined }))).judged
    expect(one!.comparison).toMatchObject({
      ok: false,
      problem: {
        message: 'The gauge is not on record, so its accuracy is not known. It is held against nothing.',
      },
    })
  })

  test('a gauge joined with another is judged as the one that was kept', () => {
    const coarse = said('gauge', {
      name: 'G7',
      unit: 'Pa',
      percentOfSpan: 50,
      combine: 'plus',
      spanPascals: 5000,
      resolutionPascals: 1,
    })
    const taken = reading(0.7, { gaugeId: coarse.id })
    expect(then(coarse, taken)).toEqual([['Too close to call']])
    const join = said('same as', { kept: ids.gauge, duplicate: coarse.id, reason: 'Entered twice.' })
    expect(then(coarse, taken, join)).toEqual([['Enough to close it']])
  })
})

describe('limitsNow(rating), what a reading writes down, and ratingThen(body), what it is judged by later', () => {
  const ratingOf = (...records: HeldRecord[]) => {
    const file = team(records)
    const position = file.positions.get(ids.low)!
    return {
      position,
      rating: ratingAt(
        file,
        position,
        furnaceForRating(file.furnaces.get(ids.furnace)!),
        ratingSettings(file, now),
      ),
    }
  }
  const thenOf = ({ position, rating }: ReturnType<typeof ratingOf>) => {
    const body = readingBody.parse({ ...reading(0.7).body, against: limitsNow(rating) })
    return ratingThen(body, position.body)
  }

  test('go there and back: the rating of that day, whole', () => {
    const known = ratingOf()
    expect(known.rating.closes.level).toBe('Verified')
    expect(thenOf(known)).toEqual(ratingForComparison(known.rating, known.position.body))
  })

  test('go there and back in dispute, with every value that was possible', () => {
    const disputed = ratingOf(contradicting)
    expect(disputed.rating.closes.level).toBe('In dispute')
    expect(thenOf(disputed)?.closes?.candidates).toHaveLength(2)
    expect(thenOf(disputed)).toEqual(ratingForComparison(disputed.rating, disputed.position.body))
  })

  test('a verdict that every value in dispute shared is still there afterwards', () => {
    const { rating } = ratingOf(contradicting)
    const low = reading(0.3, { against: limitsNow(rating) })
    expect(then(low)).toEqual([['Too low to close it']])
    expect(then(reading(0.7, { against: limitsNow(rating) }))).toEqual([['Settle the rating first']])
  })

  test('write down the level, the sources and the reports, so that they can be looked up', () => {
    const { rating } = ratingOf()
    const [closes, opens] = limitsNow(rating)
    expect(closes).toMatchObject({ action: 'closes', level: 'Verified', pascals: inches(0.58) })
    expect(closes?.sources.toSorted()).toEqual(['current literature', 'factory support'])
    expect(closes?.reportIds.toSorted()).toEqual([ids.lowCloses, ids.lowClosesSaid])
    expect(opens).toMatchObject({ action: 'opens', pascals: inches(0.43) })
  })

  test('write down nothing where nothing is on file', () => {
    const nothing = ratingFor([], { id: ids.furnace }, { now })
    expect(limitsNow(nothing)).toEqual([])
    expect(ratingThen(readingBody.parse({ ...reading(0.7).body, against: [] }))).toBeUndefined()
  })
})

describe('expectedAt(file, furnaceId, like)', () => {
  const healthy = (value: number, more = {}, day = 2) => {
    const one = reading(
      value,
      { caseId: undefined, visitId: undefined, phase: 'steady hot', contacts: 'closed', ...more },
      { at: at(day) },
    )
    return [one, baselineOf(one, day)] as const
  }
  const baselineOf = (one: HeldRecord, day: number) =>
    said(
      'baseline',
      { furnaceId: ids.furnace, readingId: one.id, occasion: 'annual service', on: '2026-01-02' },
      { at: at(day) },
    )
  const like = readingBody.parse(hot(0.7).body)
  const pascals = (...records: HeldRecord[]) => expectedAt(team(records), ids.furnace, like)?.pascals

  test('is the mean of each baseline reading of this furnace', () => {
    const [one, itsBaseline] = healthy(0.7, { samples: [inches(0.68), inches(0.72)] })
    expect(pascals(one, itsBaseline, ...healthy(0.75))?.map((value) => value / inches(1))).toEqual([
      expect.closeTo(0.7, 9),
      expect.closeTo(0.75, 9),
    ])
  })

  test('is nothing without a baseline, and a reading that nobody called one is none', () => {
    expect(pascals()).toBeUndefined()
    expect(pascals(healthy(0.7)[0])).toBeUndefined()
  })

  test.each([
    ['phase', { phase: 'pre-purge' }],
    ['stage', { stage: 'high fire' }],
    ['points', { between: 'port and cabinet' }],
    ['tap', { tap: 'inducer inlet' }],
    ['sense', { sense: 'pressure' }],
    ['situation', { situation: 'first port to the room' }],
  ])('a baseline in another %s says nothing', (_, more) => {
    expect(pascals(...healthy(0.7, more))).toBeUndefined()
  })

  test('one taken in a calm speaks for a reading as found', () => {
    expect(pascals(...healthy(0.7, { situation: 'calm' }))).toHaveLength(1)
  })

  test('a withdrawn baseline, or a withdrawn reading, says nothing', () => {
    const [one, itsBaseline] = healthy(0.7)
    expect(pascals(one, itsBaseline, withdrawn(itsBaseline))).toBeUndefined()
    expect(pascals(one, itsBaseline, withdrawn(one))).toBeUndefined()
  })

  test('another furnace’s baselines say nothing of this one', () => {
    const [one, itsBaseline] = healthy(0.7)
    expect(expectedAt(team([one, itsBaseline]), '01940000-0000-7000-8000-000000000059', like)).toBeUndefined()
  })

  test('makes a reading higher than expected, on the day only by what was on record by then', () => {
    const records = healthy(0.6, { phase: 'pre-purge' })
    const high = reading(0.9, { contacts: 'closed' })
    expect(then(high, ...records)).toEqual([['Higher than expected', 'Enough to close it']])
    const later = healthy(0.6, { phase: 'pre-purge' }, 19)
    expect(then(high, ...later)).toEqual([['Enough to close it']])
    expect(today(high, ...later)).toEqual([['Higher than expected', 'Enough to close it']])
  })

  test('says nothing of a reading for which something was changed', () => {
    const records = healthy(0.6, { phase: 'pre-purge' })
    const changed = reading(0.9, { contacts: 'closed', situation: 'vent opened' })
    expect(then(changed, ...records)).toEqual([['Enough to close it']])
  })
})

test('a reading belongs to its case and no input is changed', () => {
  const taken = reading(0.7)
  const before = structuredClone(taken)
  viewOf(team(opened, Object.freeze(taken)), now)
  expect(taken).toEqual(before)
  expect(taken.body).toMatchObject(ofVisit)
})
