import { expect, test } from 'vitest'
import { chanceOfLoss, countOf, howMany, shareOf, winterWords } from '@/app/helper/figureWords'

test('countOf(rate) and shareOf(rate): a share only from ten cases on, always with its interval', () => {
  const rate = (hits: number, cases: number, from: number, to: number) => ({
    hits,
    cases,
    rate: hits / cases,
    interval95: [from, to] as const,
  })
  expect(countOf(rate(81, 178, 0, 1))).toBe('81 of 178')
  // L. D. Brown, T. T. Cai & A. DasGupta, Statistical Science 16 (2001): Wilson's interval; 81 of 263 is
  // [0.2553, 0.3662] in R. G. Newcombe, Statistics in Medicine 17 (1998), table I.
  expect(shareOf(rate(81, 263, 0.2553, 0.3662))).toBe('31 %, between 26 % and 37 %')
  expect(shareOf(rate(9, 9, 0.7, 1))).toBe('too few to say a share')
  expect(shareOf(rate(0, 10, 0, 0.2775))).toBe('0 %, between 0 % and 28 %')
})

test('howMany(cases) calls small numbers small', () => {
  expect(howMany(1)).toContain('One case is next to nothing.')
  expect(howMany(29)).toContain('29 cases are few.')
  expect(howMany(30)).not.toContain('few')
})

test('winterWords(began) names both years, over the turn of a century too', () => {
  expect([winterWords(2023), winterWords(2099)]).toEqual(['Winter 2023/24', 'Winter 2099/00'])
})

test('chanceOfLoss(loss) is e to the minus loss: ln 4 nats are one in four', () => {
  expect(chanceOfLoss(Math.log(4))).toBe('25 %')
  expect(chanceOfLoss(0)).toBe('100 %')
  expect(chanceOfLoss(20)).toBe('under 1 %')
})
