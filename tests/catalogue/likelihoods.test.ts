import { describe, expect, test } from 'vitest'
import { causeById, causes } from '@/lib/catalogue/causes'
import { findingById, findings } from '@/lib/catalogue/findings'
import { chancesFrom } from '@/lib/catalogue/likelihoods/chances'
import { chanceOfWord } from '@/lib/catalogue/likelihoods/words'
import { type Pair, pairsOf, tradeTable } from './tradeTable'

const chanceOf = ({ cause, finding, value }: Pair) => ({
  here: causeById(cause)?.likelihoods?.[finding]?.[value] ?? Number.NaN,
  usual: findingById(finding)?.usual[value] ?? Number.NaN,
})
const rows = Object.entries(tradeTable)
const all = (part: 'raises' | 'lowers' | 'signature' | 'byItsName') =>
  rows.flatMap(([cause, row]) => pairsOf(cause, row[part]))
const keyOf = ({ cause, finding }: Pair) => `${cause} × ${finding}`

describe('chancesFrom(values, words, usual?)', () => {
  const values = ['good', 'bad', 'worse']

  test('gives a named value its word’s chance and shares the rest as usual', () => {
    const chances = chancesFrom(values, { bad: 'usually' }, { good: 0.6, bad: 0.1, worse: 0.3 })
    expect(chances.bad).toBe(0.75)
    expect(chances.good).toBeCloseTo(0.25 * (0.6 / 0.9), 12)
    expect(chances.worse).toBeCloseTo(0.25 * (0.3 / 0.9), 12)
  })

  test('holds values that are named together to 0.95, in proportion, and all of them to 1', () => {
    const two = chancesFrom(values, { bad: 'almost always', worse: 'as often as not' })
    expect(two.good).toBeCloseTo(0.05, 12)
    expect(two.bad! / two.worse!).toBeCloseTo(0.92 / 0.5, 12)
    const three = chancesFrom(values, { good: 'seldom', bad: 'seldom', worse: 'seldom' })
    for (const value of values) expect(three[value]).toBeCloseTo(1 / 3, 12)
  })

  test('throws RangeError at a value that is none, and when nothing is said', () => {
    expect(() => chancesFrom(values, { green: 'usually' })).toThrow(RangeError)
    expect(() => chancesFrom(values, {})).toThrow(RangeError)
  })

  test('the five words stand in their order, each above 0 and below 1', () => {
    const chances = Object.values(chanceOfWord)
    expect(chances).toHaveLength(5)
    expect(chances.toSorted((a, b) => b - a)).toEqual(chances)
    for (const chance of chances) expect(chance > 0 && chance < 1).toBe(true)
  })
})

describe('what each cause says of each finding', () => {
  test('the table names every cause, and only findings and values that there are', () => {
    expect(rows.map(([cause]) => cause)).toEqual(causes.map(({ id }) => id))
    for (const part of ['raises', 'lowers', 'signature', 'byItsName'] as const)
      for (const { finding, value } of all(part)) expect(findingById(finding)?.values).toContain(value)
  })

  test('what the trade counts for a cause is more frequent under it than usual', () => {
    for (const pair of [...all('raises'), ...all('signature'), ...all('byItsName')]) {
      const { here, usual } = chanceOf(pair)
      expect(here, `${keyOf(pair)} = ${pair.value}`).toBeGreaterThan(usual)
    }
  })

  test('what it counts against a cause is less frequent under it than usual', () => {
    for (const pair of all('lowers')) {
      const { here, usual } = chanceOf(pair)
      expect(here, `${keyOf(pair)} = ${pair.value}`).toBeLessThan(usual)
    }
  })

  test('every pair that is not named carries no information, and every named one is named in the table', () => {
    const typed = new Set(
      (['raises', 'lowers', 'signature', 'byItsName'] as const).flatMap((part) => all(part).map(keyOf)),
    )
    const named = causes.flatMap(({ id, likelihoods = {} }) =>
      Object.keys(likelihoods).map((finding) => `${id} × ${finding}`),
    )
    expect(new Set(named)).toEqual(typed)
    expect({
      raises: all('raises').length,
      lowers: all('lowers').length,
      signature: all('signature').length,
      byItsName: all('byItsName').length,
      named: named.length,
      unnamed: causes.length * findings.length - named.length,
    }).toEqual({ raises: 188, lowers: 59, signature: 45, byItsName: 20, named: 258, unnamed: 5022 })
  })

  test('that it sags and settles above break is normal, and lowers every water and over-length cause a little', () => {
    const water = [
      'water-in-vent-sag',
      'vent-over-length',
      'trap-plugged',
      'drain-line-blocked',
      'pump-or-shared-drain',
      'trap-dry',
      'drain-set-for-other-position',
      'water-in-hose-or-switch',
    ]
    for (const cause of water) {
      const { here, usual } = chanceOf({
        cause,
        finding: 'reading-when-hot',
        value: 'sags, settles above break',
      })
      expect(here).toBeLessThan(usual)
      expect(here).toBeGreaterThan(usual / 5)
    }
  })
})
