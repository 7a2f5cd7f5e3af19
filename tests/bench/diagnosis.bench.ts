import {
  type Catalogue,
  defaultRankingSettings,
  type PastCase,
  packCases,
  type ReplayCase,
  rankCauses,
  replayHelper,
} from '@/lib/core/diagnosis'
import { seededRandom } from '@/lib/core/seeded'

export const name = 'diagnosis'

const rounds = 15
const day = 24 * 60 * 60 * 1000
const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!
const milliseconds = (value: number) => `${value.toFixed(2)} ms`

/**
 * Ranking an invented present case (8 findings) against 100,000 invented cases (40 causes, 100 findings, 12 checked a
 * case), packed, and by a plain loop over objects of the same model, which must give the same probabilities; how the
 * cost grows with the cases; and replaying 2,000 cases over five winters. The contenders take turns, so that what
 * else the machine does falls on both. The plain loop draws no interval: it is compared with the ranking without
 * intervals and with the whole of it.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const random = seededRandom(20260320)
  const catalogue = inventCatalogue(random)
  const cases = Array.from({ length: 100_000 }, (_, place) => inventCase(catalogue, place, random))
  const observed = inventCase(catalogue, 7, random, 8).findings
  const context = cases[0]!.context!
  const started = performance.now()
  const packed = packCases(catalogue, cases)
  print(`packing 100,000 cases, once: ${milliseconds(performance.now() - started)}`)

  const noIntervals = { replicates: 0 }
  const took = { whole: [] as number[], point: [] as number[], plain: [] as number[] }
  const time = <T>(into: number[], work: () => T): T => {
    const from = performance.now()
    const result = work()
    into.push(performance.now() - from)
    return result
  }
  for (let round = 0; round < rounds; round++) {
    time(took.whole, () => rankCauses({ catalogue, cases: packed, observed, context }))
    const ranked = time(took.point, () =>
      rankCauses({ catalogue, cases: packed, observed, context, settings: noIntervals }),
    )
    const plain = time(took.plain, () => rankPlainly(catalogue, cases, observed, context))
    for (const { cause, probability } of ranked) {
      if (cause in plain && Math.abs(plain[cause]! - probability) > 1e-9) {
        throw new Error(`The two rankings differ at ${cause}: ${probability} and ${plain[cause]}`)
      }
    }
  }
  const [whole, point, plain] = [median(took.whole), median(took.point), median(took.plain)]
  print(`ranking 100,000 cases: ${milliseconds(whole)} with intervals, ${milliseconds(point)} without`)
  print(
    `  plain object loop, no intervals: ${milliseconds(plain)}, ` +
      `${(plain / point).toFixed(1)} times the ranking without intervals, ${(plain / whole).toFixed(1)} times the whole`,
  )

  for (const howMany of [1_000, 10_000, 100_000]) {
    const some = packCases(catalogue, cases.slice(0, howMany))
    const each: number[] = []
    for (let round = 0; round < 4 * rounds; round++) {
      time(each, () => rankCauses({ catalogue, cases: some, observed, context }))
    }
    print(`  ${howMany.toLocaleString('en')} cases: ${milliseconds(median(each))} a ranking with intervals`)
  }

  const history = Array.from({ length: 2_000 }, (_, place) => inventHistory(catalogue, place, random))
  const replays: number[] = []
  for (let round = 0; round < 3; round++) {
    const result = time(replays, () => replayHelper({ catalogue, cases: history }))
    if (!result.ok) throw new Error(result.problem.message)
  }
  print(`replaying 2,000 cases, 27 settings tried on each: ${milliseconds(median(replays))}`)
}

function inventCatalogue(random: () => number): Catalogue {
  const findings = Array.from({ length: 100 }, (_, place) => ({
    id: `f${place}`,
    values: ['seen', 'ruled out'],
  }))
  return {
    causes: Array.from({ length: 40 }, (_, place) => ({
      id: `cause ${place}`,
      prior: 1 + (place % 5),
      likelihoods: Object.fromEntries(
        findings.map(({ id }) => {
          const seen = 0.05 + 0.9 * random()
          return [id, { seen, 'ruled out': 1 - seen }]
        }),
      ),
    })),
    findings,
    context: [
      { id: 'furnace', weight: 0.1 },
      { id: 'model', weight: 0.1 },
      { id: 'fuel', weight: 0.05 },
    ],
  }
}

function inventCase(catalogue: Catalogue, place: number, random: () => number, checked = 12): PastCase {
  const cause = catalogue.causes[Math.floor(random() * catalogue.causes.length)]!
  const findings: Record<string, string> = {}
  while (Object.keys(findings).length < checked) {
    const { id } = catalogue.findings[Math.floor(random() * catalogue.findings.length)]!
    findings[id] = random() < cause.likelihoods![id]!.seen! ? 'seen' : 'ruled out'
  }
  const furnace = Math.floor(random() * 20_000)
  return {
    id: `case ${place}`,
    findings,
    context: {
      furnace: `furnace ${furnace}`,
      model: `model ${furnace % 300}`,
      fuel: furnace % 3 ? 'gas' : 'propane',
    },
    cause: { main: cause.id, status: random() < 0.4 ? 'presumed' : 'confirmed' },
  }
}

function inventHistory(catalogue: Catalogue, place: number, random: () => number): ReplayCase {
  const { id, findings, context, cause } = inventCase(catalogue, place, random)
  const openedAt = Date.UTC(2019 + (place % 5), 9, 1) + Math.floor(random() * 150) * day
  const at = (days: number) => ({ saidAt: openedAt + days * day, receivedAt: openedAt + days * day })
  return {
    id,
    openedAt,
    context,
    findings: Object.entries(findings).map(([finding, value]) => ({ finding, value, ...at(0) })),
    causes: [
      { says: { ...cause!, status: 'presumed' }, ...at(1) },
      { says: { ...cause!, status: 'confirmed' }, ...at(30) },
    ],
  }
}

/** The same model without contributing causes or many-valued findings, as a careful loop over objects. */
function rankPlainly(
  catalogue: Catalogue,
  cases: readonly PastCase[],
  observed: Readonly<Record<string, string>>,
  context: Readonly<Record<string, string>>,
): Record<string, number> {
  const { neighbours, priorStrength, findingStrength, unlistedPrior, statusWeights } = defaultRankingSettings
  const seenNow = Object.entries(observed)
  const distances = cases.map((one) => {
    let disagreements = 0
    let both = 0
    for (const [finding, value] of seenNow) {
      const before = one.findings[finding]
      if (before === undefined) continue
      both++
      if (before !== value) disagreements++
    }
    let distance = (disagreements + 1) / (both + 2)
    for (const { id, weight } of catalogue.context!) {
      const before = one.context?.[id]
      if (before === undefined) distance += weight / 2
      else if (before !== context[id]) distance += weight
    }
    return distance
  })
  const sorted = Float64Array.from(distances).sort()
  const kth = sorted[Math.min(neighbours, sorted.length) - 1]!
  const bandwidth = sorted.find((distance) => distance > kth + 1e-12)
  const near = cases.flatMap((one, place) => {
    const weight = bandwidth === undefined ? 1 : 1 - distances[place]! / bandwidth
    return distances[place]! <= kth + 1e-12 ? [{ one, weight }] : []
  })
  const rescale = near.length / near.reduce((sum, { weight }) => sum + weight, 0)

  const sums: Record<
    string,
    { weight: number; checked: Record<string, number>; agreeing: Record<string, number> }
  > = {}
  let total = 0
  for (const { one, weight: kernel } of near) {
    const weight = kernel * rescale * statusWeights[one.cause!.status]
    total += weight
    sums[one.cause!.main] ??= { weight: 0, checked: {}, agreeing: {} }
    const sum = sums[one.cause!.main]!
    sum.weight += weight
    for (const [finding, value] of seenNow) {
      if (one.findings[finding] === undefined) continue
      sum.checked[finding] = (sum.checked[finding] ?? 0) + weight
      if (one.findings[finding] === value) sum.agreeing[finding] = (sum.agreeing[finding] ?? 0) + weight
    }
  }
  const allPriors = catalogue.causes.reduce((sum, cause) => sum + cause.prior, 0)
  const pooled = seenNow.map(() => 0)
  const scores = catalogue.causes.map((cause) => {
    const sum = sums[cause.id]
    const share = cause.prior / allPriors
    let score = Math.log(
      ((1 - unlistedPrior) * (priorStrength * share + (sum?.weight ?? 0))) / (priorStrength + total),
    )
    seenNow.forEach(([finding, value], place) => {
      const chance = findingStrength * cause.likelihoods![finding]![value]!
      const theta =
        (chance + (sum?.agreeing[finding] ?? 0)) / (findingStrength + (sum?.checked[finding] ?? 0))
      pooled[place]! += share * theta
      score += Math.log(theta)
    })
    return score
  })
  const outside = pooled.reduce((score, theta) => score + Math.log(theta), Math.log(unlistedPrior))
  const most = Math.max(...scores, outside)
  const together = [...scores, outside].reduce((sum, score) => sum + Math.exp(score - most), 0)
  return Object.fromEntries(
    catalogue.causes.map(({ id }, place) => [id, Math.exp(scores[place]! - most) / together]),
  )
}
