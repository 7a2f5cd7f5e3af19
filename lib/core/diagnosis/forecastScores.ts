import { wilsonInterval } from '../wilsonInterval'

/** A forecast and what came true: a probability for every cause, and the place of the true one. */
export type Forecast = { probabilities: readonly number[]; truth: number }

export type HitRate = { hits: number; cases: number; rate: number; interval95: readonly [number, number] }

export type ReliabilityRow = {
  from: number
  to: number
  cases: number
  /** Mean of what was forecast for the leading cause. */
  forecast: number
  /** How often the leading cause was the true one. */
  came: HitRate
}

export type Scores = {
  cases: number
  /** Mean of −ln(probability of the true cause), nats a case, and its standard error (0 for a single case). */
  logLoss: number
  logLossStandardError: number
  brier: number
  top1: HitRate
  top3: HitRate
  reliability: ReliabilityRow[]
}

/** All the scores of one forecaster. Throws RangeError when there is no forecast. */
export function scoreForecasts(forecasts: readonly Forecast[]): Scores {
  const losses = forecasts.map(lossOf)
  const mean = logLoss(forecasts)
  const variance = losses.reduce((sum, loss) => sum + (loss - mean) ** 2, 0) / Math.max(1, losses.length - 1)
  return {
    cases: forecasts.length,
    logLoss: mean,
    logLossStandardError: Math.sqrt(variance / losses.length),
    brier: brierScore(forecasts),
    top1: topHits(forecasts, 1),
    top3: topHits(forecasts, 3),
    reliability: reliabilityTable(forecasts),
  }
}

/**
 * Mean logarithmic loss in nats (I. J. Good, 1952). A probability of 0 counts as 2⁻⁵², so that one impossible event
 * cannot make the figure infinite.
 */
export function logLoss(forecasts: readonly Forecast[]): number {
  return meanOf(forecasts, lossOf)
}

const lossOf = ({ probabilities, truth }: Forecast) =>
  -Math.log(Math.max(probabilities[truth]!, Number.EPSILON))

/**
 * Brier score over all causes, from 0 (perfect) to 2: G. W. Brier, Monthly Weather Review 78 (1950) 1-3, the original
 * form. For two causes it is twice the one-sided form that many libraries print.
 */
export function brierScore(forecasts: readonly Forecast[]): number {
  return meanOf(forecasts, ({ probabilities, truth }) =>
    probabilities.reduce(
      (sum, probability, cause) => sum + (probability - (cause === truth ? 1 : 0)) ** 2,
      0,
    ),
  )
}

/** How often the true cause was among the first k, ties in the order of the causes, with Wilson's interval. */
export function topHits(forecasts: readonly Forecast[], k: number): HitRate {
  if (forecasts.length === 0) throw new RangeError('A score requires at least one forecast')
  return hitRate(forecasts.filter((forecast) => placeOfTruth(forecast) <= k).length, forecasts.length)
}

/** Where the true cause stood, counted from 1. */
export function placeOfTruth({ probabilities, truth }: Forecast): number {
  const own = probabilities[truth]!
  return 1 + probabilities.filter((other, cause) => other > own || (other === own && cause < truth)).length
}

/** When the leading cause was given 70 to 80 %, how often was it the true one? Tenths without a case are left out. */
export function reliabilityTable(forecasts: readonly Forecast[]): ReliabilityRow[] {
  const leading = forecasts.map((forecast) => ({
    probability: Math.max(...forecast.probabilities),
    hit: placeOfTruth(forecast) === 1,
  }))
  return Array.from({ length: 10 }, (_, tenth) => tenth).flatMap((tenth) => {
    const within = leading.filter(({ probability }) => Math.min(9, Math.floor(probability * 10)) === tenth)
    if (within.length === 0) return []
    const forecast = within.reduce((sum, { probability }) => sum + probability, 0) / within.length
    const came = hitRate(within.filter(({ hit }) => hit).length, within.length)
    return [{ from: tenth / 10, to: (tenth + 1) / 10, cases: within.length, forecast, came }]
  })
}

function hitRate(hits: number, cases: number): HitRate {
  return { hits, cases, rate: hits / cases, interval95: wilsonInterval(hits, cases, 0.95) }
}

function meanOf(forecasts: readonly Forecast[], score: (forecast: Forecast) => number): number {
  if (forecasts.length === 0) throw new RangeError('A score requires at least one forecast')
  return forecasts.reduce((sum, forecast) => sum + score(forecast), 0) / forecasts.length
}
