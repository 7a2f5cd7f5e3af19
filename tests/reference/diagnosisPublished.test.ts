import { describe, expect, test } from 'vitest'
import {
  brierScore,
  type Catalogue,
  entropyBits,
  expectedBits,
  learnedLikelihoods,
  logLoss,
  type Observations,
  type PastCase,
  rankCauses,
  suggestChecks,
  topHits,
  wilsonInterval,
} from '@/lib/core/diagnosis'

/** Chances of one in a trillion cases: relative frequencies, no smoothing, to nine digits and more. */
const unsmoothed = {
  priorStrength: 1e-12,
  findingStrength: 1e-12,
  unlistedPrior: 0,
  neighbours: Infinity,
  replicates: 0,
}

const probabilitiesOf = (ranked: readonly { cause: string; probability: number }[]) =>
  Object.fromEntries(ranked.map(({ cause, probability }) => [cause, probability]))

describe('PlayTennis: T. M. Mitchell, Machine Learning, 1997, table 3.2 and section 6.9.1', () => {
  const days = `sunny hot high weak no; sunny hot high strong no; overcast hot high weak yes; rain mild high weak yes;
    rain cool normal weak yes; rain cool normal strong no; overcast cool normal strong yes; sunny mild high weak no;
    sunny cool normal weak yes; rain mild normal weak yes; sunny mild normal strong yes; overcast mild high strong yes;
    overcast hot normal weak yes; rain mild high strong no`
  const cases: PastCase[] = days.split(';').map((day, place) => {
    const [outlook, temperature, humidity, wind, play] = day.trim().split(/\s+/)
    const findings = { outlook: outlook!, temperature: temperature!, humidity: humidity!, wind: wind! }
    return { id: `day ${place + 1}`, findings, cause: { main: play!, status: 'confirmed' } }
  })
  const findings = [
    { id: 'outlook', values: ['sunny', 'overcast', 'rain'] },
    { id: 'temperature', values: ['hot', 'mild', 'cool'] },
    { id: 'humidity', values: ['high', 'normal'] },
    { id: 'wind', values: ['weak', 'strong'] },
  ]
  const catalogue: Catalogue = {
    causes: ['yes', 'no'].map((id) => ({ id, prior: 1 })),
    findings,
    checks: findings.map(({ id }) => ({ id: `look at ${id}`, reveals: [id], by: 'look' as const })),
  }
  const observed = { outlook: 'sunny', temperature: 'cool', humidity: 'high', wind: 'strong' }

  test('sunny, cool, high, strong: no 0.795, yes 0.205 (printed)', () => {
    const ranked = rankCauses({ catalogue, cases, observed, settings: unsmoothed })
    expect(ranked[0]).toMatchObject({ cause: 'no' })
    expect(Math.abs(ranked[0]!.probability - 0.795)).toBeLessThan(0.0005)
    expect(Math.abs(ranked[1]!.probability - 0.205)).toBeLessThan(0.0005)
    // 9/14 · 2/9 · 3/9 · 3/9 · 3/9 = 0.0053 and 5/14 · 3/5 · 1/5 · 4/5 · 3/5 = 0.0206 (printed), exactly:
    const [yes, no] = [(9 / 14) * (2 / 9) * (3 / 9) ** 3, (5 / 14) * (3 / 5) * (1 / 5) * (4 / 5) * (3 / 5)]
    expect(ranked[0]!.probability).toBeCloseTo(no / (yes + no), 9)
  })

  test('add-one smoothing of every chance and of the base rate: 0.73531398 (recomputed, not printed)', () => {
    // One pseudo-count for each of a finding's values is m = 1 with the strength of as many values.
    const addOne = {
      ...catalogue,
      findings: findings.map((one) => ({ ...one, strength: one.values.length })),
    }
    const settings = { ...unsmoothed, priorStrength: 2, findingStrength: 1 }
    const ranked = rankCauses({ catalogue: addOne, cases, observed, settings })
    expect(ranked[0]!.probability).toBeCloseTo(0.73531398, 8)
    expect(ranked[1]!.probability).toBeCloseTo(0.26468602, 8)
  })

  // Printed in Mitchell's chapter 3 truncated, not rounded (0.246, 0.151): hence a tolerance of 0.001.
  test('information gains: outlook 0.246, humidity 0.151, wind 0.048, temperature 0.029 bits', () => {
    expect(Math.abs(entropyBits([9 / 14, 5 / 14]) - 0.94)).toBeLessThan(0.001)
    const gains = gainsAfter({})
    expect(Object.keys(gains)).toEqual(['outlook', 'humidity', 'wind', 'temperature'])
    const printed = { outlook: 0.246, humidity: 0.151, wind: 0.048, temperature: 0.029 }
    for (const [finding, gain] of Object.entries(printed))
      expect(Math.abs(gains[finding]! - gain)).toBeLessThan(0.001)
  })

  test('on the sunny days: humidity 0.970, temperature 0.570, wind 0.019 bits (Mitchell, from memory)', () => {
    const sunny = cases.filter((one) => one.findings.outlook === 'sunny')
    const gains = gainsAfter({ outlook: 'sunny' }, sunny)
    const printed = { humidity: 0.97, temperature: 0.57, wind: 0.019 }
    for (const [finding, gain] of Object.entries(printed))
      expect(Math.abs(gains[finding]! - gain)).toBeLessThan(0.001)
  })

  function gainsAfter(seen: Observations, among = cases): Record<string, number> {
    const asked = { catalogue, cases: among, observed: {}, settings: unsmoothed }
    const planned = suggestChecks({
      ranked: rankCauses(asked),
      catalogue,
      observed: seen,
      costs: Object.fromEntries(catalogue.checks!.map(({ id }) => [id, 1])),
      likelihoods: learnedLikelihoods(asked),
    })
    return Object.fromEntries(
      planned.map(({ check, expectedBitsPerMinute }) => [
        check.replace('look at ', ''),
        expectedBitsPerMinute,
      ]),
    )
  }
})

describe('"Asia": S. L. Lauritzen & D. J. Spiegelhalter, J. R. Statist. Soc. B 50 (1988) 157-224', () => {
  // The tables as printed in the grain vignette of R's gRain package.
  const yes = (chance: number) => [chance, 1 - chance] as const
  type World = Record<'asia' | 'tub' | 'smoke' | 'lung' | 'bronc' | 'either' | 'xray' | 'dysp', boolean>
  const worlds: { world: World; chance: number }[] = []
  const bits = [true, false]
  const take = (table: readonly [number, number], value: boolean) => table[value ? 0 : 1]
  for (const asia of bits)
    for (const tub of bits)
      for (const smoke of bits)
        for (const lung of bits)
          for (const bronc of bits)
            for (const xray of bits)
              for (const dysp of bits) {
                const either = tub || lung
                const breathless = either ? (bronc ? 0.9 : 0.7) : bronc ? 0.8 : 0.1
                const chance =
                  take(yes(0.01), asia) *
                  take(yes(asia ? 0.05 : 0.01), tub) *
                  take(yes(0.5), smoke) *
                  take(yes(smoke ? 0.1 : 0.01), lung) *
                  take(yes(smoke ? 0.6 : 0.3), bronc) *
                  take(yes(either ? 0.98 : 0.05), xray) *
                  take(yes(breathless), dysp)
                worlds.push({ world: { asia, tub, smoke, lung, bronc, either, xray, dysp }, chance })
              }
  const chanceOf = (is: Partial<World>, given: Partial<World> = {}) => {
    const fits = (world: World, wanted: Partial<World>) =>
      Object.entries(wanted).every(([node, value]) => world[node as keyof World] === value)
    const sum = (wanted: Partial<World>) =>
      worlds.reduce((total, { world, chance }) => total + (fits(world, wanted) ? chance : 0), 0)
    return sum({ ...given, ...is }) / sum(given)
  }

  test('the enumeration used below gives the printed posteriors', () => {
    expect(chanceOf({ tub: true })).toBeCloseTo(0.0104, 4)
    expect(chanceOf({ lung: true })).toBeCloseTo(0.055, 4)
    expect(chanceOf({ bronc: true })).toBeCloseTo(0.45, 4)
    const evidence = { asia: true, dysp: true }
    expect(chanceOf({ tub: true }, evidence)).toBeCloseTo(0.08775, 5)
    expect(chanceOf({ lung: true }, evidence)).toBeCloseTo(0.09953, 5)
    expect(chanceOf({ bronc: true }, evidence)).toBeCloseTo(0.8114, 4)
  })

  // Where the findings are independent given the cause, naive Bayes is the exact answer.
  test.each<[keyof World, (keyof World)[]]>([
    ['tub', ['xray']],
    ['lung', ['xray']],
    ['tub', ['asia']],
    ['bronc', ['dysp']],
    ['smoke', ['lung', 'bronc']],
    ['either', ['xray', 'dysp']],
    ['either', ['xray', 'smoke']],
    ['tub', ['asia', 'xray']],
  ])('%s by %j: the exact posterior for every outcome', (cause, seen) => {
    const chances = (node: keyof World, given: boolean) => ({
      seen: chanceOf({ [node]: true }, { [cause]: given }),
      'ruled out': chanceOf({ [node]: false }, { [cause]: given }),
    })
    const catalogue: Catalogue = {
      causes: bits.map((given) => ({
        id: given ? 'yes' : 'no',
        prior: chanceOf({ [cause]: given }),
        likelihoods: Object.fromEntries(seen.map((node) => [node, chances(node, given)])),
      })),
      findings: seen.map((id) => ({ id, values: ['seen', 'ruled out'] })),
    }
    for (const first of bits)
      for (const second of seen.length > 1 ? bits : [true]) {
        const outcome = [first, second].slice(0, seen.length)
        const observed = Object.fromEntries(
          seen.map((node, at) => [node, outcome[at] ? 'seen' : 'ruled out']),
        )
        const given = Object.fromEntries(seen.map((node, at) => [node, outcome[at]!]))
        const ranked = rankCauses({ catalogue, cases: [], observed, settings: { unlistedPrior: 0 } })
        expect(probabilitiesOf(ranked).yes).toBeCloseTo(chanceOf({ [cause]: true }, given), 10)
      }
  })

  test('a positive X-ray leaves 0.092411 for tuberculosis and 0.488711 for lung cancer (exact, recomputed)', () => {
    expect(chanceOf({ tub: true }, { xray: true })).toBeCloseTo(0.092411, 6)
    expect(chanceOf({ lung: true }, { xray: true })).toBeCloseTo(0.488711, 6)
  })
})

describe('predictive value of one test', () => {
  // Gigerenzer's seminar, as retold: 9 of 98, "about 1 in 10"; "Chances Are": 7 of 77; "Mammogram Math": about 32 %;
  // Eddy 1982: 7.8 % (from memory). The six-digit values are recomputed.
  test.each([
    [0.01, 0.9, 0.09, 0.091743, 0.998891],
    [0.008, 0.9, 0.07, 0.093946, 0.999134],
    [0.005, 0.95, 0.01, 0.323129, 0.999746],
    [0.01, 0.8, 0.096, 0.07764, 0.99777],
  ])(
    'prevalence %d, sensitivity %d, false alarms %d: positive %d, negative %d',
    (prevalence, hit, alarm, ppv, npv) => {
      const chances = (seen: number) => ({ test: { seen, 'ruled out': 1 - seen } })
      const catalogue: Catalogue = {
        causes: [
          { id: 'ill', prior: prevalence, likelihoods: chances(hit) },
          { id: 'well', prior: 1 - prevalence, likelihoods: chances(alarm) },
        ],
        findings: [{ id: 'test', values: ['seen', 'ruled out'] }],
      }
      const afterTest = (value: string) =>
        probabilitiesOf(
          rankCauses({ catalogue, cases: [], observed: { test: value }, settings: { unlistedPrior: 0 } }),
        )
      expect(afterTest('seen').ill).toBeCloseTo(ppv, 6)
      expect(afterTest('ruled out').well).toBeCloseTo(npv, 6)
    },
  )
})

describe('scores of forecasts, against the worked examples in scikit-learn’s documentation', () => {
  test('Brier: 0.0375 one-sided, so 0.075 over both causes (brier_score_loss doctest)', () => {
    const forecasts = [0.1, 0.9, 0.8, 0.3].map((chance, at) => ({
      probabilities: [1 - chance, chance],
      truth: [0, 1, 1, 0][at]!,
    }))
    expect(brierScore(forecasts) / 2).toBeCloseTo(0.0375, 12)
  })

  test('log loss: 0.21616 (log_loss doctest: spam, ham, ham, spam)', () => {
    const forecasts = [
      [0.1, 0.9],
      [0.9, 0.1],
      [0.8, 0.2],
      [0.35, 0.65],
    ].map((probabilities, at) => ({ probabilities, truth: [1, 0, 0, 1][at]! }))
    expect(logLoss(forecasts)).toBeCloseTo(0.21616, 5)
    expect(logLoss(forecasts)).toBeCloseTo(0.2161618747, 10)
  })

  test('top 2: 3 hits of 4 (top_k_accuracy_score doctest)', () => {
    const forecasts = [
      [0.5, 0.2, 0.2],
      [0.3, 0.4, 0.2],
      [0.2, 0.4, 0.3],
      [0.7, 0.2, 0.1],
    ].map((probabilities, at) => ({ probabilities, truth: [0, 1, 2, 2][at]! }))
    expect(topHits(forecasts, 2)).toMatchObject({ hits: 3, cases: 4, rate: 0.75 })
  })
})

describe('Wilson: R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I (printed limits from memory)', () => {
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i: %d to %d', (hits, of, low, high) => {
    const found = wilsonInterval(hits, of, 0.95)
    expect(Math.abs(found[0] - low)).toBeLessThan(0.00005)
    expect(Math.abs(found[1] - high)).toBeLessThan(0.00005)
  })
})

test('expected information of a test that is right p of the time: 1 − H(p), the capacity of a binary channel (Shannon 1948)', () => {
  // H(0.11) = 0.4999 bits, the familiar half-bit channel.
  expect(
    expectedBits(
      [0.5, 0.5],
      [
        [0.89, 0.11],
        [0.11, 0.89],
      ],
    ),
  ).toBeCloseTo(0.5001, 4)
})
