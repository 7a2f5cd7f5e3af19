import {
  type Catalogue,
  type Context,
  type Finding,
  notChecked,
  type Observations,
  type PastCase,
  type RankingSettings,
  unlistedCause,
} from '@/lib/core/diagnosis'

/**
 * Locally weighted naive Bayes written out plainly over objects, from E. Frank, M. Hall & B. Pfahringer, "Locally
 * weighted naive Bayes", UAI 2003 (formulas from memory): f(y) = 1 − y for y ≤ 1 else 0, w_i = f(d_i / bandwidth),
 * w_i ← w_i · r / Σ w, r the number of cases with weight. It shares no code with what it checks, and is slow.
 */
export function plainPosterior(asked: {
  catalogue: Catalogue
  cases: readonly PastCase[]
  observed: Observations
  context?: Context
  settings: RankingSettings
}): Map<string, number> {
  const { catalogue, settings } = asked
  const weights = plainWeights(asked)
  const evidence = catalogue.findings.filter(
    (one) => one.carries !== 'context only' && isChecked(asked.observed, one),
  )
  const priorSum = catalogue.causes.reduce((sum, cause) => sum + cause.prior, 0)
  const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0)
  const thetas = new Map<string, number[]>()
  const scores = new Map<string, number>()
  for (const cause of catalogue.causes) {
    const share = (one: PastCase) =>
      plainShare(catalogue, one, cause.id, settings) * (weights.get(one.id) ?? 0)
    const ofCause = asked.cases.reduce((sum, one) => sum + share(one), 0)
    let score = (settings.priorStrength * cause.prior) / priorSum + ofCause
    score *= (1 - settings.unlistedPrior) / (settings.priorStrength + total)
    const row = evidence.map((finding) => {
      const value = asked.observed[finding.id]!
      const checked = asked.cases.filter((one) => isChecked(one.findings, finding))
      const agreeing = checked.filter((one) => one.findings[finding.id] === value)
      const m = settings.findingStrength * (finding.strength ?? 1)
      const chance = (cause.likelihoods?.[finding.id] ?? finding.usual)?.[value] ?? 1 / finding.values.length
      const add = (cases: readonly PastCase[]) => cases.reduce((sum, one) => sum + share(one), 0)
      return (m * chance + add(agreeing)) / (m + add(checked))
    })
    thetas.set(cause.id, row)
    scores.set(
      cause.id,
      row.reduce((product, theta) => product * theta, score),
    )
  }
  const pooled = evidence.map((_, place) =>
    catalogue.causes.reduce(
      (sum, cause) => sum + (cause.prior / priorSum) * thetas.get(cause.id)![place]!,
      0,
    ),
  )
  if (settings.unlistedPrior > 0) {
    scores.set(
      unlistedCause,
      pooled.reduce((product, theta) => product * theta, settings.unlistedPrior),
    )
  }
  const sum = [...scores.values()].reduce((all, score) => all + score, 0)
  return new Map([...scores].map(([cause, score]) => [cause, score / sum]))
}

/** The weight of every case that has one, its status included. */
export function plainWeights(asked: {
  catalogue: Catalogue
  cases: readonly PastCase[]
  observed: Observations
  context?: Context
  settings: RankingSettings
}): Map<string, number> {
  const { catalogue, settings } = asked
  const usable = asked.cases
    .filter((one) => catalogue.causes.some((cause) => cause.id === one.cause?.main))
    .map((one) => ({ one, distance: plainDistance(catalogue, asked.observed, asked.context ?? {}, one) }))
    .sort((a, b) => a.distance - b.distance)
  const kth = usable[Math.min(settings.neighbours, usable.length) - 1]
  const beyond = usable.find((near) => kth !== undefined && near.distance > kth.distance + 1e-12)
  const kernel = usable.map(({ distance }) => {
    if (beyond === undefined) return 1
    return distance < beyond.distance - 1e-12 ? 1 - distance / beyond.distance : 0
  })
  const r = kernel.filter((weight) => weight > 0).length
  const sum = kernel.reduce((total, weight) => total + weight, 0)
  return new Map(
    usable.map(({ one }, place) => [
      one.id,
      (kernel[place]! * r * settings.statusWeights[one.cause!.status]) / sum,
    ]),
  )
}

export function plainDistance(
  catalogue: Catalogue,
  observed: Observations,
  context: Context,
  one: Pick<PastCase, 'findings' | 'context'>,
): number {
  const both = catalogue.findings.filter(
    (finding) =>
      finding.carries !== 'context only' && isChecked(observed, finding) && isChecked(one.findings, finding),
  )
  const disagreements = both.filter((finding) => observed[finding.id] !== one.findings[finding.id]).length
  let distance = (disagreements + 1) / (both.length + 2)
  for (const { id, weight } of catalogue.context ?? []) {
    const [now, then] = [context[id], one.context?.[id]]
    if (now === undefined || then === undefined) distance += weight / 2
    else if (now !== then) distance += weight
  }
  return distance
}

function plainShare(catalogue: Catalogue, one: PastCase, cause: string, settings: RankingSettings): number {
  const listed = catalogue.causes.some(({ id }) => id === one.cause?.contributing)
  if (one.cause?.main === cause) return listed ? 1 - settings.contributingShare : 1
  return listed && one.cause?.contributing === cause ? settings.contributingShare : 0
}

const isChecked = (observations: Observations, { id }: Finding) =>
  (observations[id] ?? notChecked) !== notChecked
