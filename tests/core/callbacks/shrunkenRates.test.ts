import fc from 'fast-check'
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { type RateGroup, shrunkenRates } from '@/lib/core/callbacks'
import { betaBinomialPosterior, logLikelihood } from '@/lib/core/callbacks/betaBinomialPosterior'
import { betaMixtureQuantile } from '@/lib/core/callbacks/betaMixture'
import { seededRandom } from '@/lib/core/seeded'
import { deepFreeze } from '../diagnosis/anyDiagnosis'

const settings = { seed: 20260412, numRuns: 15 }

const named = (counts: readonly (readonly [number, number])[]): RateGroup[] =>
  deepFreeze(counts.map(([count, of], place) => ({ group: `group ${place}`, count, of })))

const anyCounts = fc.array(
  fc.integer({ min: 1, max: 60 }).chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of))),
  { minLength: 1, maxLength: 8 },
)

describe('shrunkenRates(groups)', () => {
  test('1 of 1 beside 4 of 40, 6 of 60 and 2 of 25 comes out near a seventh, and says how little it knows', () => {
    const [one] = shrunkenRates(
      named([
        [1, 1],
        [4, 40],
        [6, 60],
        [2, 25],
      ]),
    )
    expect(one).toMatchObject({ ownRate: 1, rate: expect.closeTo(0.149, 3) })
    expect(one!.interval[0]).toBeLessThan(0.05)
    expect(one!.interval[1]).toBeGreaterThan(0.35)
  })

  test('each rate lies between its own and what it is drawn towards, at its own weight', () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        for (const { rate, ownRate, drawnTowards, ownWeight } of shrunkenRates(named(counts))) {
          expect(rate).toBeCloseTo(ownWeight * ownRate + (1 - ownWeight) * drawnTowards, 12)
          expect(ownWeight > 0 && ownWeight < 1).toBe(true)
          expect(drawnTowards > 0 && drawnTowards < 1).toBe(true)
        }
      }),
      settings,
    )
  })

  test('groups of one size are drawn towards one common rate, near that of all jobs together, and keep their order', () => {
    const sameSize = fc
      .integer({ min: 1, max: 40 })
      .chain((of) =>
        fc.array(fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)), { minLength: 2, maxLength: 10 }),
      )
    fc.assert(
      fc.property(sameSize, (counts) => {
        const rates = shrunkenRates(named(counts))
        for (const rate of rates) expect(rate.drawnTowards).toBeCloseTo(rates[0]!.drawnTowards, 12)
        const jobs = counts.reduce((sum, [, of]) => sum + of, 0)
        const pooled = counts.reduce((sum, [count]) => sum + count, 0) / jobs
        // Jeffreys' half callback on either side, once for the common rate, bounds the distance.
        expect(Math.abs(rates[0]!.drawnTowards - pooled)).toBeLessThan(0.5 / (1 + counts.length))
        const sorted = rates.toSorted((a, b) => a.count - b.count).map(({ rate }) => rate)
        expect(sorted).toEqual(sorted.toSorted((a, b) => a - b))
      }),
      settings,
    )
  })

  test('the more jobs a group has, the more its own rate weighs', () => {
    const weights = shrunkenRates(
      named([
        [1, 5],
        [2, 10],
        [8, 40],
        [40, 200],
      ]),
    ).map((one) => one.ownWeight)
    expect(weights).toEqual(weights.toSorted((a, b) => a - b))
  })

  test('groups that differ no more than chance makes them come out alike, with about the interval of all jobs', () => {
    const rates = shrunkenRates(named(Array.from({ length: 40 }, () => [10, 100] as const)))
    // Jeffreys' interval of 400 of 4000, by jstat; a group may still differ a little from the others.
    const [low, high] = [jstat.beta.inv(0.025, 400.5, 3600.5), jstat.beta.inv(0.975, 400.5, 3600.5)]
    for (const { rate, interval, ownWeight } of rates) {
      expect(rate).toBeCloseTo(0.1, 3)
      expect(ownWeight).toBeLessThan(0.1)
      expect(interval[0] < low && interval[0] > low - 0.02).toBe(true)
      expect(interval[1] > high && interval[1] < high + 0.02).toBe(true)
    }
  })

  test('groups that differ wholly keep their own rates', () => {
    for (const { rate, ownRate, ownWeight } of shrunkenRates(
      named([
        [5, 200],
        [100, 200],
        [195, 200],
      ]),
    )) {
      expect(rate).toBeCloseTo(ownRate, 2)
      expect(ownWeight).toBeGreaterThan(0.98)
    }
  })

  test('no callback anywhere is no promise of none: the rates stay above 0, the less so the more jobs', () => {
    const [few] = shrunkenRates(
      named([
        [0, 3],
        [0, 4],
      ]),
    )
    const [many] = shrunkenRates(
      named([
        [0, 300],
        [0, 400],
      ]),
    )
    expect(few!.interval[1]).toBeGreaterThan(0.2)
    expect(many!.interval[1]).toBeLessThan(0.01)
    expect(few!.rate > many!.rate && many!.rate > 0).toBe(true)
  })

  test('counting what did not come back instead gives the complement', () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const rates = shrunkenRates(named(counts))
        shrunkenRates(named(counts.map(([count, of]) => [of - count, of] as const))).forEach(
          (other, place) => {
            expect(other.rate).toBeCloseTo(1 - rates[place]!.rate, 6)
            expect(other.interval[0]).toBeCloseTo(1 - rates[place]!.interval[1], 4)
          },
        )
      }),
      settings,
    )
  })

  test('the order of the groups does not matter', () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const [one, other] = [
          shrunkenRates(named(counts)),
          shrunkenRates(named(counts.toReversed())).toReversed(),
        ]
        one.forEach((rate, place) => {
          expect(rate.rate).toBeCloseTo(other[place]!.rate, 12)
        })
      }),
      settings,
    )
  })

  test('the interval holds the rate and widens with the confidence', () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const wide = shrunkenRates(named(counts), 0.95)
        shrunkenRates(named(counts), 0.5).forEach(({ interval, rate }, place) => {
          expect(wide[place]!.interval[0]).toBeLessThanOrEqual(interval[0])
          expect(wide[place]!.interval[1]).toBeGreaterThanOrEqual(interval[1])
          expect(wide[place]!.interval[0] <= rate && rate <= wide[place]!.interval[1]).toBe(true)
        })
      }),
      settings,
    )
  })

  test('the ends of the interval cut off a fortieth each of the whole mixture of betas, by jstat, to within 0.003', () => {
    const groups = named([
      [1, 8],
      [0, 15],
      [9, 30],
      [2, 11],
      [6, 12],
    ])
    const explanations = betaBinomialPosterior(groups).flat()
    for (const { count, of, interval } of shrunkenRates(groups)) {
      const [below, upTo] = interval.map((end) =>
        explanations.reduce(
          (sum, { mean, strength, weight }) =>
            sum + weight * jstat.beta.cdf(end, count + mean * strength, of - count + (1 - mean) * strength),
          0,
        ),
      )
      // With no callback the lower end is a thousandth or so, and every explanation bends differently there.
      expect(Math.abs(below! - 0.025)).toBeLessThan(count === 0 ? 0.01 : 0.003)
      expect(Math.abs(upTo! - 0.975)).toBeLessThan(0.003)
    }
  })

  test('its 95 % intervals hold the true rate about as often as they say, over 480 groups of known rates', () => {
    const random = seededRandom(20260412)
    let held = 0
    let asked = 0
    for (let team = 0; team < 40; team++) {
      // Every fourth team has groups that do not differ at all.
      const spread = team % 4 === 0 ? 0 : 0.15
      const truths = Array.from({ length: 12 }, () => 0.05 + spread * random())
      const counts = truths.map((truth) => {
        const of = 1 + Math.floor(60 * random() ** 2)
        return [Array.from({ length: of }, () => random()).filter((one) => one < truth).length, of] as const
      })
      shrunkenRates(named(counts)).forEach(({ interval }, place) => {
        asked++
        if (interval[0] <= truths[place]! && truths[place]! <= interval[1]) held++
      })
    }
    expect(asked).toBe(480)
    expect(held / asked).toBeGreaterThan(0.93)
    expect(held / asked).toBeLessThan(0.995)
  })

  test('no groups, no rates; a count that is not possible: RangeError', () => {
    expect(shrunkenRates([])).toEqual([])
    for (const counts of [[[2, 1]], [[-1, 4]], [[0, 0]], [[0.5, 2]], [[1, 2.5]]] as const)
      expect(() => shrunkenRates(named(counts))).toThrow(
        new RangeError('shrunkenRates requires whole numbers with 0 ≤ count ≤ of, of ≥ 1'),
      )
    expect(() => shrunkenRates(named([[1, 2]]), 0)).toThrow('confidence between 0 and 1')
  })
})

describe('betaBinomialPosterior(groups)', () => {
  test('the likelihood of 2 of 4 in one order under a flat distribution is B(3, 3)/B(1, 1) = 1/30', () => {
    // Each of 0 to 4 has 1/5, and 2 of 4 comes in 6 orders: (1/5)/6.
    expect(logLikelihood([{ count: 2, of: 4, groups: 1 }], 0.5, 2)).toBeCloseTo(Math.log(1 / 30), 12)
  })

  test('agrees with a plain fine grid over the same two scales, means and spreads of every rate', () => {
    const groups = deepFreeze([
      { count: 1, of: 8 },
      { count: 0, of: 15 },
      { count: 9, of: 30 },
      { count: 2, of: 11 },
    ])
    const [means, shrinkages, typicalSize] = [400, 250, 16]
    const tallies = groups.map((group) => ({ ...group, groups: 1 }))
    const moments = (cells: readonly { mean: number; strength: number; weight: number }[]) => {
      const whole = cells.reduce((sum, { weight }) => sum + weight, 0)
      return groups.map(({ count, of }) => {
        const average = (value: (rate: number, size: number) => number) =>
          cells.reduce(
            (sum, { mean, strength, weight }) =>
              sum + weight * value((count + mean * strength) / (of + strength), of + strength),
            0,
          ) / whole
        const rate = average((one) => one)
        const second = average((one, size) => one ** 2 + (one * (1 - one)) / (size + 1))
        return [rate, Math.sqrt(second - rate ** 2)] as const
      })
    }
    const plain = Array.from({ length: means * shrinkages }, (_, cell) => {
      const angle = (((cell % means) + 0.5) / means) * (Math.PI / 2)
      const shrinkage = (Math.floor(cell / means) + 0.5) / shrinkages
      const mean = Math.sin(angle) ** 2
      const strength = (typicalSize * shrinkage) / (1 - shrinkage)
      return { mean, strength, weight: Math.exp(logLikelihood(tallies, mean, strength)) }
    })
    const brute = moments(plain)
    moments(betaBinomialPosterior(groups).flat()).forEach(([rate, spread], place) => {
      expect(rate).toBeCloseTo(brute[place]![0], 3)
      expect(spread).toBeCloseTo(brute[place]![1], 3)
    })
  })

  test('closes in on the answer of very many jobs, where a fixed grid would step over it', () => {
    const [one] = shrunkenRates(
      named([
        [10_000, 100_000],
        [10_100, 100_000],
      ]),
    )
    expect(one!.rate).toBeCloseTo(0.1, 2)
    expect(one!.interval[0] > 0.097 && one!.interval[1] < 0.103).toBe(true)
  })
})

describe('betaMixtureQuantile(parts, share)', () => {
  test('a flat distribution has each share where it says; of two halves worked by hand, too', () => {
    for (const share of [0.001, 0.025, 0.3, 0.5, 0.975])
      expect(betaMixtureQuantile([{ mean: 1 / 2, secondMoment: 1 / 3, weight: 1 }], share)).toBeCloseTo(
        share,
        4,
      )
    // Two halves, Beta(1, 3) and Beta(3, 1): the median is a half by symmetry; x = 0.1 has (1 − 0.9³ + 0.1³)/2 below.
    const halves = deepFreeze([
      { mean: 1 / 4, secondMoment: 1 / 10, weight: 1 / 2 },
      { mean: 3 / 4, secondMoment: 6 / 10, weight: 1 / 2 },
    ])
    expect(betaMixtureQuantile(halves, 0.5)).toBeCloseTo(0.5, 4)
    expect(betaMixtureQuantile(halves, (1 - 0.9 ** 3 + 0.1 ** 3) / 2)).toBeCloseTo(0.1, 4)
  })
})
