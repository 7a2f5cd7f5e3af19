import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { type ChartPoint, controlChart, shrunkenRates, wilsonInterval } from '@/lib/core/callbacks'
import { betaBinomialPosterior, logLikelihood } from '@/lib/core/callbacks/betaBinomialPosterior'

const numbers = (printed: string): readonly number[] => Object.freeze(printed.trim().split(/\s+/).map(Number))

/**
 * R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3. The cases as in the help of R's
 * DescTools; the printed limits from memory, the six digits recomputed with two other libraries.
 */
describe('Wilson’s intervals, 95 %', () => {
  test.each([
    [81, 263, '0.2553', '0.3662', 0.255289, 0.36621],
    [15, 148, '0.0624', '0.1605', 0.062386, 0.160487],
    [0, 20, '0.0000', '0.1611', 0, 0.161125],
    [1, 29, '0.0061', '0.1718', 0.006113, 0.171755],
  ])('%i of %i: %s to %s', (hits, of, low, high, lowExactly, highExactly) => {
    const found = wilsonInterval(hits, of, 0.95)
    expect(Math.abs(found[0] - Number(low))).toBeLessThanOrEqual(0.00005)
    expect(Math.abs(found[1] - Number(high))).toBeLessThanOrEqual(0.00005)
    expect(Math.abs(found[0] - lowExactly)).toBeLessThan(6e-7)
    expect(Math.abs(found[1] - highExactly)).toBeLessThan(6e-7)
    // jstat's own normal quantile in Wilson's formula.
    const z = jstat.normal.inv(0.975, 0, 1)
    const half = z * Math.sqrt(((hits / of) * (1 - hits / of)) / of + (z * z) / (4 * of * of))
    expect(found[1]).toBeCloseTo((hits / of + (z * z) / (2 * of) + half) / (1 + (z * z) / of), 6)
  })
})

/**
 * B. Efron & C. Morris, JASA 70 (1975) 311-319, table 1: hits in the first 45 at bats of 1970, and the rest of the
 * season (data as in R's pscl). Names are left out. Their estimates are James and Stein's, on the averages
 * themselves: every average keeps c = 0.212 of its distance to the grand mean 0.265, c from k − 3 and one normal
 * variance for all (recomputed: 0.211653; estimates of the 1977 paper in Scientific American).
 */
describe('batting averages', () => {
  const hits = numbers('18 17 16 15 14 14 13 12 11 11 10 10 10 10 10 9 8 7')
  const laterTimes = numbers('367 426 521 275 418 466 586 138 510 200 277 270 435 538 186 558 408 70')
  const later = numbers(
    '.346 .298 .276 .222 .273 .270 .263 .210 .269 .230 .264 .256 .303 .264 .226 .285 .316 .200',
  )
  const jamesStein = numbers(
    '.294 .289 .285 .280 .275 .275 .270 .266 .261 .261 .256 .256 .256 .256 .256 .252 .247 .242',
  )
  const found = shrunkenRates(hits.map((count, place) => ({ group: `${place}`, count, of: 45 })))

  test('the common rate is the grand mean 0.265', () => {
    for (const { drawnTowards } of found) expect(Math.abs(drawnTowards - 0.265)).toBeLessThan(0.0015)
  })

  test('every estimate is within 0.004 of James and Stein’s', () => {
    // Ours differs because the spread between players is not one number taken for certain but weighed over all
    // values, and because the counts are taken as binomial: it keeps 0.23 of the distance, theirs 0.21.
    found.forEach(({ rate }, place) => {
      expect(Math.abs(rate - jamesStein[place]!)).toBeLessThan(0.004)
    })
    expect(Math.abs(found[0]!.ownWeight - 0.212)).toBeLessThan(0.03)
  })

  test('it foretells the rest of the season better than the averages do, as theirs does (squared error 3.5 times less)', () => {
    const squaredError = (estimates: readonly number[]) =>
      estimates.reduce((sum, estimate, place) => sum + (estimate - later[place]!) ** 2, 0)
    const raw = squaredError(hits.map((count) => count / 45))
    expect(raw).toBeCloseTo(0.075317, 6)
    expect(raw / squaredError(jamesStein)).toBeGreaterThan(3.4)
    expect(raw / squaredError(found.map(({ rate }) => rate))).toBeGreaterThan(3.4)
  })

  test('its 95 % intervals hold all the later averages, which have a chance error of their own', () => {
    found.forEach(({ interval }, place) => {
      const error = 2 * Math.sqrt((0.265 * 0.735) / laterTimes[place]!)
      expect(interval[0] - error <= later[place]! && later[place]! <= interval[1] + error).toBe(true)
    })
  })
})

/**
 * Tumours in control groups of rats: R. E. Tarone, Biometrics 38 (1982) 215-220; A. Gelman et al., Bayesian Data
 * Analysis, 3rd ed., section 5.3. Data as in R's BayesGOF, whose vignette prints the maximum-likelihood estimates.
 */
describe('rat tumours', () => {
  const printed = `0/20 0/20 0/20 0/20 0/20 0/20 0/20 0/19 0/19 0/19 0/19 0/18 0/18 0/17 1/20 1/20 1/20 1/20 1/19
    1/19 1/18 1/18 3/27 2/25 2/24 2/23 2/20 2/20 2/20 2/20 2/20 2/20 1/10 5/49 2/19 5/46 2/17 7/49 7/47 3/20 3/20
    2/13 9/48 10/50 4/20 4/20 4/20 4/20 4/20 4/20 4/20 10/48 4/19 4/19 4/19 5/22 11/46 12/49 5/20 5/20 6/23 5/19
    6/22 6/20 6/20 6/20 16/52 15/46 15/47 9/24`
  const groups = printed
    .trim()
    .split(/\s+/)
    .map((group) => group.split('/').map(Number))
    .map(([count, of]) => ({ count: count!, of: of! }))

  test('the likelihood of 70 groups is greatest at α 2.304768, β 14.079707', () => {
    const tallies = groups.map((group) => ({ ...group, groups: 1 }))
    const at = (a: number, b: number) => logLikelihood(tallies, a / (a + b), a + b)
    const [alpha, beta] = [2.304768, 14.079707]
    const slope = (a: number, b: number) => (at(alpha + a, beta + b) - at(alpha - a, beta - b)) / 2e-3
    expect(groups).toHaveLength(70)
    expect(Math.abs(slope(1e-3, 0))).toBeLessThan(1e-4)
    expect(Math.abs(slope(0, 1e-3))).toBeLessThan(1e-4)
    for (const [a, b] of [
      [0.05, 0],
      [-0.05, 0],
      [0, 0.3],
      [0, -0.3],
      [0.05, 0.3],
      [-0.05, -0.3],
    ] as const)
      expect(at(alpha + a, beta + b)).toBeLessThan(at(alpha, beta))
  })

  test('with the 71st group, 4 of 14, and that book’s own prior the expected α is 2.4 and β 14.3 (p. 113, from memory)', () => {
    const all = [...groups, { count: 4, of: 14 }]
    const typicalSize = all.reduce((sum, { of }) => sum + of, 0) / all.length
    // (α + β)^(−5/2) is strength^(−3/2) with a flat mean; our own prior is divided out.
    const cells = betaBinomialPosterior(all)
      .flat()
      .map(({ mean, strength, weight }) => ({
        alpha: mean * strength,
        beta: (1 - mean) * strength,
        weight: weight * strength ** -1.5 * (typicalSize + strength) ** 2 * Math.sqrt(mean * (1 - mean)),
      }))
    const whole = cells.reduce((sum, { weight }) => sum + weight, 0)
    const expected = (of: 'alpha' | 'beta') =>
      cells.reduce((sum, cell) => sum + cell.weight * cell[of], 0) / whole
    expect(Math.abs(expected('alpha') - 2.4)).toBeLessThan(0.05)
    expect(Math.abs(expected('beta') - 14.3)).toBeLessThan(0.05)
  })
})

describe('control limits', () => {
  const charted = (points: readonly ChartPoint[]) =>
    points.map((point) => {
      if (point.verdict === 'nothing counted') throw new Error('Every sample has something counted')
      return point
    })
  const outside = (points: readonly ChartPoint[]) =>
    points.flatMap(({ verdict }, place) => (verdict === 'within' ? [] : [`${place + 1} ${verdict}`]))
  const ofSize = (printed: string, of: number) => numbers(printed).map((count) => ({ count, of }))

  // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.1, 25 wafers; from memory.
  test('c, wafers: centre 16, limits 4 and 28, the 24th above; the 28 on the limit is within', () => {
    const counts = '16 14 28 16 12 20 10 12 10 17 19 17 14 16 15 13 14 16 11 20 11 19 16 31 13'
    const chart = charted(controlChart('c', ofSize(counts, 1)))
    expect(chart[0]).toMatchObject({ centre: 16, lower: 4, upper: 28 })
    expect(outside(chart)).toEqual(['24 above'])
  })

  /**
   * D. C. Montgomery, Introduction to Statistical Quality Control, 2nd ed. 1991, pp. 152-155, 173-175, 181-182; data
   * and limits as the help and vignette of R's qcc print them.
   */
  test('p, orange juice cans: centre 0.2313333, limits 0.05242755 and 0.4102391, the 15th and 23rd above', () => {
    const counts = '12 15 8 10 4 7 16 9 14 10 5 6 17 12 22 8 10 5 13 11 20 18 24 15 9 12 7 13 9 6'
    const chart = charted(controlChart('p', ofSize(counts, 50)))
    expect(chart[0]!.centre).toBeCloseTo(0.2313333, 7)
    expect(chart[0]!.lower).toBeCloseTo(0.05242755, 8)
    expect(chart[0]!.upper).toBeCloseTo(0.4102391, 7)
    expect(outside(chart)).toEqual(['15 above', '23 above'])
    const without = chart.filter((_, place) => place !== 14 && place !== 22)
    expect(charted(controlChart('p', without))[0]!.centre).toBeCloseTo(0.215, 12)
  })

  test('c, circuit boards: centre 19.84615, limits 6.481447 and 33.21086, the 6th below and the 20th above', () => {
    const counts = '21 24 16 12 15 5 28 20 31 25 20 24 16 19 10 17 13 22 18 39 30 24 16 19 17 15'
    const chart = charted(controlChart('c', ofSize(counts, 1)))
    expect(chart[0]!.centre).toBeCloseTo(19.84615, 5)
    expect(chart[0]!.lower).toBeCloseTo(6.481447, 6)
    expect(chart[0]!.upper).toBeCloseTo(33.21086, 5)
    expect(outside(chart)).toEqual(['6 below', '20 above'])
  })

  test('u, computers in fives: centre 1.93, limits 0.06613305 and 3.793867, none outside', () => {
    const counts = '10 12 8 14 10 16 11 7 10 15 9 5 7 11 12 6 8 10 7 5'
    const chart = charted(controlChart('u', ofSize(counts, 5)))
    expect(chart[0]!.centre).toBeCloseTo(1.93, 12)
    expect(chart[0]!.lower).toBeCloseTo(0.06613305, 8)
    expect(chart[0]!.upper).toBeCloseTo(3.793867, 6)
    expect(outside(chart)).toEqual([])
  })

  // SAS/QC sample library, SHWUEX3: defects in fabric rolls of unequal square metres; the limits are recomputed.
  test('u, fabric rolls of unequal size: centre 0.2880493; for 30 m² limits 0 and 0.582013, none outside', () => {
    const rolls = `7 30.0; 11 27.6; 15 30.4; 6 34.8; 11 26.0; 15 28.6; 5 28.0; 10 30.2; 8 28.2; 3 31.4; 3 30.3;
      14 27.8; 3 27.0; 9 30.0; 7 32.1; 6 34.8; 7 26.5; 5 30.0; 14 31.3; 13 31.6; 11 29.4; 6 28.6; 6 27.5; 9 32.6;
      11 31.7`
    const points = rolls
      .split(';')
      .map(numbers)
      .map(([count, of]) => ({ count: count!, of: of! }))
    const chart = charted(controlChart('u', points))
    expect(chart[0]!.centre).toBeCloseTo(0.2880493, 7)
    expect(chart[0]!.lower).toBe(0)
    expect(chart[0]!.upper).toBeCloseTo(0.582013, 6)
    expect(chart[3]!.upper).toBeLessThan(chart[4]!.upper)
    expect(outside(chart)).toEqual([])
  })
})
