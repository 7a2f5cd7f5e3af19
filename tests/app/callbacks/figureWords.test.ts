import { describe, expect, test } from 'vitest'
import { askedHref, questionOf, readAsked, usualAsked } from '@/app/callbacks/asked'
import { daysToRead } from '@/app/callbacks/curveWords'
import { differenceWords, sayMinutes, shareWithInterval, smallNumber } from '@/app/callbacks/figureWords'
import type { LogRank } from '@/lib/core/callbacks/logRank'
import { failure, success } from '@/lib/core/result'

const now = '2026-11-20T09:00:00Z'

describe('shareWithInterval: a share is said with its interval, and under ten cases not at all', () => {
  test.each([
    [{ count: 3, of: 9, interval95: [0.12, 0.65] as const }, 'too few to say a share'],
    [{ count: 3, of: 10, interval95: [0.108, 0.603] as const }, '30\u00a0%, between 11\u00a0% and 60\u00a0%'],
    [{ count: 0, of: 0 }, 'no job'],
  ])('%o', (share, words) => {
    expect(shareWithInterval(share)).toBe(words)
  })
})

describe('differenceWords: the log-rank test in plain words', () => {
  const withP = (pValue: number) =>
    success<LogRank>({ chiSquare: 1, degreesOfFreedom: 1, pValue, observed: [], expected: [] })

  test.each([
    [
      0.24,
      /no more than chance often makes.*about 24 times in 100 \(log-rank test, p = 0\.24\)\. That does not show/,
    ],
    [0.02, /more than chance easily makes.*about once in 50 times \(log-rank test, p = 0\.020\)\.$/],
    [0.00004, /less than once in 1,000 times \(log-rank test, p under 0\.001\)\.$/],
  ])('p %d', (pValue, words) => {
    expect(differenceWords(withP(pValue), 40, 40)).toMatch(words)
  })

  test('no job is not called few', () => {
    expect(smallNumber(0)).toBe('No job to count yet: nothing can be said of a share.')
    expect(differenceWords(withP(0.5), 0, 12)).toMatch(/No furnace came back so far\.$/)
  })

  test('small numbers are said to be small', () => {
    expect(differenceWords(withP(0.5), 1, 3)).toMatch(
      /One callback is few\. A curve of fewer than ten furnaces says little\.$/,
    )
    expect(differenceWords(failure('nothing-to-compare', 'Nothing to compare.'), 9, 12)).toBe(
      'Nothing to compare. 9 callbacks are few.',
    )
    expect(smallNumber(1)).toMatch(/^One job is few/)
    expect(smallNumber(30)).toBeUndefined()
  })
})

test('minutes are said in hours and minutes', () => {
  expect([5, 60, 95, 6000].map(sayMinutes)).toEqual(['5 min', '1 h', '1 h 35 min', '100 h'])
})

describe('what is asked, in the address', () => {
  test('as usual: nothing in the address, the last 24 months, 30 days, the proving circuit, heating-season days', () => {
    expect(askedHref(usualAsked)).toBe('/callbacks')
    expect(questionOf(readAsked(new URLSearchParams()), '2022-10', now)).toEqual({
      fromMonth: '2024-12',
      toMonth: '2026-11',
      days: 30,
      sameCircuit: true,
      timeScale: 'heating-season days',
    })
  })

  test('there and back: what an address says is what it is made of again', () => {
    const href =
      '/callbacks?period=chosen&from=2025-01&to=2025-06&branch=North&range=r1&days=42&circuit=any&scale=calendar&open=settled'
    const asked = readAsked(new URL(href, 'http://localhost').searchParams)
    expect(askedHref(asked)).toBe(href)
    expect(questionOf(asked, '2022-10', now)).toEqual({
      fromMonth: '2025-01',
      toMonth: '2025-06',
      branch: 'North',
      rangeId: 'r1',
      days: 42,
      sameCircuit: false,
      timeScale: 'calendar days',
    })
  })

  test('what cannot be read is as usual, and two months the wrong way round mean the same', () => {
    expect(readAsked(new URLSearchParams('period=9&days=0&from=2025-13&circuit=x'))).toEqual(usualAsked)
    const turned = readAsked(new URLSearchParams('period=chosen&from=2025-06&to=2025-01'))
    expect(questionOf(turned, '2022-10', now)).toMatchObject({ fromMonth: '2025-01', toMonth: '2025-06' })
  })

  test('everything on file begins with the first case', () => {
    const all = readAsked(new URLSearchParams('period=all'))
    expect(questionOf(all, '2022-10', now)).toMatchObject({ fromMonth: '2022-10', toMonth: '2026-11' })
    expect(questionOf(all, undefined, now)).toMatchObject({ fromMonth: '2026-11', toMonth: '2026-11' })
  })
})

test('curves are read off at days that lie within what was watched', () => {
  const watched = (longest: number) => ({
    curves: [{ watchedDays: [1, longest] }] as unknown as Parameters<typeof daysToRead>[0]['curves'],
    test: failure('nothing-to-compare', ''),
  })
  expect(daysToRead(watched(20))).toEqual([])
  expect(daysToRead(watched(100))).toEqual([30, 60, 90])
  expect(daysToRead(watched(400))).toEqual([30, 90, 180, 270, 365])
  expect(daysToRead(watched(2000))).toEqual([180, 365, 730, 1095, 1460])
})
