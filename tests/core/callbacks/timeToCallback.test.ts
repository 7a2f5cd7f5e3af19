import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { kaplanMeier, lifetimesOf, survivalAt, timeToCallback } from '@/lib/core/callbacks'
import { anyCases, anyWindow, at, caseOf, windowOf } from './made'

const settings = { seed: 20260412, numRuns: 150 }
const window = windowOf()
const now = at('2026-04-01')

describe('timeToCallback(cases, window, now, replacedFurnaces)', () => {
  const fixed = caseOf('fix', '2026-01-01', '2026-01-02')
  const ended = (...later: Parameters<typeof caseOf>[]) =>
    timeToCallback([fixed, ...later.map((one) => caseOf(...one))], window, now).map(
      ({ days, endedBy, laterId }) => ({
        days,
        endedBy,
        ...(laterId !== undefined && { laterId }),
      }),
    )

  test('from the first fix to the first case on the proving circuit; the window’s days set no limit', () => {
    expect(ended(['back', '2026-03-02'])).toEqual([{ days: 59, endedBy: 'callback', laterId: 'back' }])
  })

  test('nothing yet: watched until now', () => {
    expect(ended()).toEqual([{ days: 89, endedBy: 'end of observation' }])
  })

  test.each(['left off', 'repair declined'] as const)(
    '"%s" about something else ends the watching without a callback',
    (how) => {
      const later = ended(['other', '2026-01-20', '2026-01-22', { circuit: 'something else', how }])
      expect(later).toEqual([{ days: 20, endedBy: how, laterId: 'other' }])
    },
  )

  test('left off on the callback itself is a callback, on the day it was opened', () => {
    const later = ended(['back', '2026-01-20', '2026-01-22', { how: 'left off' }])
    expect(later).toEqual([{ days: 18, endedBy: 'callback', laterId: 'back' }])
  })

  test('another repair of something else ends nothing', () => {
    expect(ended(['other', '2026-01-20', '2026-01-22', { circuit: 'something else' }])).toEqual([
      { days: 89, endedBy: 'end of observation' },
    ])
  })

  test('a furnace that was replaced is watched until then; replaced before the fix is another furnace’s affair', () => {
    const replaced = (day: string) =>
      timeToCallback([fixed, caseOf('back', '2026-03-02')], window, now, [
        { furnaceId: 'furnace 1', at: at(day), endedBy: 'furnace replaced' },
      ])[0]
    expect(replaced('2026-02-01')).toMatchObject({ days: 30, endedBy: 'furnace replaced' })
    expect(replaced('2025-06-01')).toMatchObject({ endedBy: 'callback' })
    expect(replaced('2026-03-20')).toMatchObject({ endedBy: 'callback' })
  })

  test('on one moment the callback comes before the end of watching', () => {
    const episodes = timeToCallback([fixed, caseOf('back', '2026-02-01')], window, now, [
      { furnaceId: 'furnace 1', at: at('2026-02-01'), endedBy: 'left off' },
    ])
    expect(episodes[0]).toMatchObject({ endedBy: 'callback' })
  })

  test('left off by a notice that is of no case ends the watching too', () => {
    const watchEnds = [{ furnaceId: 'furnace 1', at: at('2026-01-12'), endedBy: 'left off' as const }]
    expect(timeToCallback([fixed, caseOf('back', '2026-03-02')], window, now, watchEnds)).toMatchObject([
      { days: 10, endedBy: 'left off' },
    ])
  })

  test('with a time in which episodes begin, the first fix in it counts', () => {
    const cases = [fixed, caseOf('second', '2026-01-20', '2026-01-21'), caseOf('third', '2026-02-20')]
    const begun = (from: string, before: string) =>
      timeToCallback(cases, window, now, [], { from: at(from), before: at(before) })
    expect(begun('2026-01-02', '2026-01-21')).toMatchObject([{ caseId: 'fix' }])
    expect(begun('2026-01-03', '2026-03-01')).toMatchObject([{ caseId: 'second', days: 30 }])
    expect(begun('2026-01-03', '2026-01-21')).toEqual([])
  })

  test('only repaired and proven starts an episode', () => {
    for (const how of ['repaired, not proven', 'no fault found', 'waiting for part', 'left off'] as const)
      expect(timeToCallback([caseOf('A', '2026-01-01', '2026-01-02', { how })], window, now)).toEqual([])
  })

  test('one episode a furnace, from its first fix', () => {
    const cases = [fixed, caseOf('second', '2026-01-20', '2026-01-21'), caseOf('third', '2026-02-20')]
    expect(timeToCallback(cases, window, now)).toMatchObject([{ caseId: 'fix', days: 18, laterId: 'second' }])
  })

  test('in heating-season days a summer takes none', () => {
    const cases = [caseOf('fix', '2025-04-20', '2025-04-21'), caseOf('back', '2025-10-11')]
    const season = windowOf({ calendar: 'heating-season days' })
    expect(timeToCallback(cases, season, now)).toMatchObject([{ days: 20, endedBy: 'callback' }])
  })

  test('what happened after now is left out', () => {
    expect(timeToCallback([fixed, caseOf('back', '2026-03-02')], window, at('2026-02-01'))).toMatchObject([
      { days: 30, endedBy: 'end of observation' },
    ])
  })

  test('makes lifetimes: three furnaces, one called back on day 18, one quiet, one left off on day 10', () => {
    const of = (furnaceId: string) => ({ furnaceId })
    const cases = [
      fixed,
      caseOf('back', '2026-01-20'),
      caseOf('quiet', '2026-01-01', '2026-01-02', of('furnace 2')),
      caseOf('third', '2026-01-01', '2026-01-02', of('furnace 3')),
      caseOf('off', '2026-01-12', '2026-01-12', {
        ...of('furnace 3'),
        circuit: 'something else',
        how: 'left off',
      }),
    ]
    const { times, events } = lifetimesOf(timeToCallback(cases, window, now))
    expect(times).toEqual([18, 89, 10])
    expect(events).toEqual([true, false, false])
    // At day 18 two are watched and one is called back.
    expect(survivalAt(kaplanMeier(times, events), 30)).toBe(0.5)
  })

  test('no time is negative, no furnace comes twice, and the order of cases does not matter', () => {
    fc.assert(
      fc.property(anyCases, anyWindow, (cases, window) => {
        const episodes = timeToCallback(cases, window, now)
        expect(episodes.every(({ days }) => days >= 0)).toBe(true)
        expect(new Set(episodes.map(({ furnaceId }) => furnaceId)).size).toBe(episodes.length)
        expect(timeToCallback(cases.toReversed(), window, now)).toEqual(episodes)
      }),
      settings,
    )
  })

  test('a case given twice, or no present: RangeError', () => {
    expect(() => timeToCallback([fixed, fixed], window, now)).toThrow(RangeError)
    expect(() => timeToCallback([fixed], window, Number.NaN)).toThrow(
      new RangeError('The present must be a number of milliseconds'),
    )
  })
})
