import { describe, expect, test } from 'vitest'
import { figuresOf } from '@/lib/records/view/callbacks/callbackFigures'
import type { CaseFacts } from '@/lib/records/view/callbacks/caseFacts'
import { teamFactsOf } from '@/lib/records/view/callbacks/caseFacts'
import { atRiskOn } from '@/lib/records/view/callbacks/curveFigure'
import type { CallbackQuestion } from '@/lib/records/view/callbacks/question'
import { deepFreeze } from '../../../core/diagnosis/anyDiagnosis'

const at = (day: string): number => Date.parse(`${day}T12:00:00Z`)

type More = Partial<Omit<CaseFacts, 'id' | 'ended'>> & {
  how?: NonNullable<CaseFacts['ended']>['how']
  by?: string
}

/** A case of one furnace, opened and ended on days; repaired and proven by Ann, with both readings, in 60 minutes. */
function facts(id: string, furnaceId: string, opened: string, ended?: string, more: More = {}): CaseFacts {
  const { how = 'repaired and proven', by = 'ann', ...rest } = more
  return {
    id,
    furnaceId,
    circuit: 'proving circuit',
    openedAt: at(opened),
    ...(ended === undefined ? {} : { ended: { at: at(ended), how, by } }),
    cause: 'trap-plugged',
    remedy: 'put right without a part',
    readBefore: true,
    readAfter: true,
    minutes: 60,
    parts: [],
    ...rest,
  }
}

const question: CallbackQuestion = deepFreeze({
  fromMonth: '2025-11',
  toMonth: '2026-02',
  days: 30,
  sameCircuit: true,
  timeScale: 'calendar days',
})
const now = at('2026-02-20')

/**
 * Seven furnaces of one winter, seen on 20 February: November and December are settled (a job of 31 December could
 * come back until 30 January), January and February are open.
 */
const winter: readonly CaseFacts[] = deepFreeze([
  facts('A1', 'A', '2025-11-03', '2025-11-04', { branch: 'North', rangeId: 'lark' }),
  facts('A2', 'A', '2025-11-20', '2025-11-21', {
    branch: 'North',
    rangeId: 'lark',
    cause: 'vent-end-blocked',
    by: 'bo',
  }),
  facts('B1', 'B', '2025-11-10', '2025-11-10', {
    remedy: 'switch replaced',
    parts: [{ key: 'p1', words: 'OM-1' }],
  }),
  facts('B2', 'B', '2025-12-05', '2025-12-06', { how: 'repaired, not proven', readAfter: false, by: 'bo' }),
  facts('C1', 'C', '2025-12-12', '2025-12-12', {
    how: 'no fault found',
    minutes: undefined,
    cause: undefined,
  }),
  facts('C2', 'C', '2026-01-20', '2026-01-21', { circuit: 'something else' }),
  facts('D1', 'D', '2026-01-05', '2026-01-06', {
    remedy: 'another part fitted',
    parts: [{ key: 'p2', words: 'hose' }],
  }),
  facts('D2', 'D', '2026-01-16', undefined),
  facts('E1', 'E', '2025-12-01', '2025-12-02', { how: 'left off' }),
  facts('F1', 'F', '2026-02-10', '2026-02-11', {
    trouble: 'proof lacks something',
    how: 'repaired, not proven',
  }),
  facts('G1', 'G', '2026-02-12', undefined, { trouble: 'endings disagree' }),
])
const figures = (asked: Partial<CallbackQuestion> = {}, moment = now) =>
  figuresOf(teamFactsOf(winter, []), { ...question, ...asked }, moment)

describe('figuresOf(facts, question, now), worked out by hand', () => {
  test('a month is settled once its window has run out; a younger one stands open with what came back so far', () => {
    expect(
      figures().months.map(({ month, standing, cameBack }) => [
        month,
        standing,
        cameBack.countedIds,
        cameBack.otherIds,
      ]),
    ).toEqual([
      ['2025-11', 'settled', ['A1', 'B1'], ['A2']],
      ['2025-12', 'settled', [], ['B2', 'C1']],
      ['2026-01', 'open', ['D1'], []],
      ['2026-02', 'open', [], ['F1']],
    ])
    expect(figures().settled).toMatchObject({ count: 2, of: 5 })
    expect(figures().open).toMatchObject({ count: 1, of: 2 })
  })

  test('only settled months make the chart: centre 2 of 5, limits wider for December’s two jobs', () => {
    const [november, december, january] = figures().months
    // 0.4 ± 3 √(0.4 · 0.6 / 3) leaves 0 to 1.
    expect(november!.point).toMatchObject({
      value: 2 / 3,
      centre: 0.4,
      lower: 0,
      upper: 1,
      verdict: 'within',
    })
    expect(december!.point).toMatchObject({ value: 0, centre: 0.4 })
    expect(november!.roughLimits).toBe(true)
    expect(january!.point).toBeUndefined()
  })

  test('of the jobs that came back those that were proven are told apart', () => {
    expect(figures().months[0]!.fixesThatCameBack).toMatchObject({ count: 2, of: 3 })
    expect(figures().months[1]!.fixesThatCameBack).toEqual({ count: 0, of: 0, countedIds: [], otherIds: [] })
  })

  test('causes and remedies, most callbacks first, with Wilson’s interval', () => {
    expect(figures().causes.map(({ key, cameBack: { count, of } }) => [key, count, of])).toEqual([
      ['trap-plugged', 2, 3],
      ['not named', 0, 1],
      ['vent-end-blocked', 0, 1],
    ])
    expect(figures().remedies.map(({ key, cameBack: { count, of } }) => [key, count, of])).toEqual([
      ['switch replaced', 1, 1],
      ['put right without a part', 1, 4],
    ])
    const [low, high] = figures().causes[0]!.cameBack.interval95!
    // 2 of 3: (p + z²/2n ± z √(p(1 − p)/n + z²/4n²)) / (1 + z²/n).
    expect([low, high]).toEqual([expect.closeTo(0.2077, 4), expect.closeTo(0.9385, 4)])
  })

  test('the time to a callback: the first fix of each furnace, in whole days', () => {
    const { curves, test } = figures().curves.bySwitch
    expect(curves.map(({ key, watchedDays }) => [key, watchedDays])).toEqual([
      // A 16 days, D 10; F1 lacks proof, C and E have no fix on the circuit.
      ['switch not replaced', [10, 16]],
      ['switch replaced', [25]],
    ])
    expect(curves[0]!.steps.map(({ time, survival, fixIds }) => [time, survival, fixIds])).toEqual([
      [10, 0.5, ['D1']],
      [16, 0, ['A1']],
    ])
    expect([0, 10, 11, 17].map((day) => atRiskOn(curves[0]!, day))).toEqual([2, 2, 1, 0])
    // At 10 days 2 of the 3 watched are without a new switch, at 16 days 1 of 2: expected there 2/3 + 1/2 = 7/6.
    expect(test.ok && test.value.expected[0]).toBeCloseTo(7 / 6, 12)
  })

  test('in heating-season days a summer takes none', () => {
    const spring = [
      facts('S1', 'S', '2025-04-20', '2025-04-21'),
      facts('S2', 'S', '2025-10-11', '2025-10-12'),
    ]
    const asked = { ...question, fromMonth: '2025-04', timeScale: 'heating-season days' as const }
    const [curve] = figuresOf(teamFactsOf(spring, []), asked, now).curves.byRemedy.curves
    // 21 April noon to the end of April, and 1 October to 11 October noon.
    expect(curve!.watchedDays).toEqual([20])
  })

  test('a furnace replaced or left off meanwhile is watched until then', () => {
    const quiet = [facts('Q1', 'Q', '2025-11-03', '2025-11-04'), facts('R1', 'R', '2025-11-03', '2025-11-04')]
    const { curves } = figuresOf(
      teamFactsOf(quiet, [
        { furnaceId: 'Q', at: at('2025-11-24'), endedBy: 'furnace replaced' },
        { furnaceId: 'R', at: at('2025-12-04'), endedBy: 'left off' },
      ]),
      question,
      now,
    ).curves.byRemedy
    expect(curves[0]).toMatchObject({
      watchedDays: [20, 30],
      cameBackIds: [],
      censored: { 'furnace replaced': ['Q1'], 'left off': ['R1'], 'end of observation': [] },
    })
  })

  test('costs: minutes of all cases that ended, how many of them on callbacks, and what nobody said', () => {
    const { all, callbacks, byCause, parts } = figures().costs
    // A1 A2 B1 B2 D1 E1 F1 with 60 minutes each; C1 without; C2 is about something else.
    expect(all).toMatchObject({ minutes: 420, medianMinutes: 60, notSaidIds: ['C1'] })
    expect(callbacks).toMatchObject({ minutes: 120, saidIds: ['A2', 'B2'] })
    expect(byCause.map(({ key, minutes }) => [key, minutes])).toEqual([
      ['trap-plugged', 360],
      ['vent-end-blocked', 60],
      ['not named', 0],
    ])
    expect(parts.map(({ words, callbacks: { count, of } }) => [words, count, of])).toEqual([
      ['OM-1', 0, 1],
      ['hose', 0, 1],
    ])
  })

  test('readings before and after, of the repairs of each month; where nothing was repaired there is no after', () => {
    const { all, months } = figures().readings
    expect(all.both).toMatchObject({ count: 5, of: 6, otherIds: ['B2'] })
    expect(months.map(({ month, both }) => [month, both.count, both.of])).toEqual([
      ['2025-11', 3, 3],
      ['2025-12', 0, 1],
      ['2026-01', 1, 1],
      ['2026-02', 1, 1],
    ])
  })

  test('people: drawn together by as much as their counts are small, in the order of their jobs', () => {
    const [ann, bo] = figures().people
    expect(ann).toMatchObject({ personId: 'ann', cameBack: { count: 2, of: 3 } })
    expect(bo).toMatchObject({ personId: 'bo', cameBack: { count: 0, of: 2 } })
    expect(ann!.shrunken.rate).toBeLessThan(2 / 3)
    expect(bo!.shrunken.rate).toBeGreaterThan(0)
  })

  test('what is in no figure, or not as it was said, is named', () => {
    expect(figures().apart).toEqual({
      endingsDisagree: ['G1'],
      proofLacksSomething: ['F1'],
      notEnded: ['D2'],
    })
  })

  test('by branch and model range: the furnaces that are of it, and nothing else', () => {
    for (const asked of [{ branch: 'North' }, { rangeId: 'lark' }])
      expect(figures(asked).settled).toMatchObject({ countedIds: ['A1'], otherIds: ['A2'] })
    expect(figures({ branch: 'South' }).settled.of).toBe(0)
  })

  test('more days, and any circuit: C1 comes back after 39 days with something else', () => {
    expect(figures({ days: 45 }, at('2026-03-20')).settled.countedIds).toEqual(['A1', 'B1', 'D1'])
    expect(figures({ days: 45, sameCircuit: false }, at('2026-03-20')).settled.countedIds).toEqual([
      'A1',
      'B1',
      'C1',
      'D1',
    ])
  })

  test('the period is that of the jobs: a callback after its end still counts', () => {
    const { settled, months } = figures({ fromMonth: '2025-11', toMonth: '2025-11' })
    expect(settled).toMatchObject({ countedIds: ['A1', 'B1'], of: 3 })
    expect(months).toHaveLength(1)
  })

  test('nothing on record: every figure is empty, and none is missing', () => {
    expect(figuresOf([], question, now)).toMatchObject({
      settled: { count: 0, of: 0 },
      months: [],
      causes: [],
      curves: { byCause: { curves: [] } },
      readings: { months: [] },
      people: [],
    })
  })

  test('a month that is none, or a window without days: RangeError', () => {
    expect(() => figures({ fromMonth: '2026-13' })).toThrow('A month is written as 2026-01, not as 2026-13')
    expect(() => figures({ days: 0 })).toThrow('A callback window has a number of days above 0')
  })
})
