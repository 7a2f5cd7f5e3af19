import { failure, type Result, success } from '../result'
import type { Catalogue, CauseStatus, NamedCause } from './catalogue'
import { checkCatalogue } from './checkCatalogue'
import { type Forecast, placeOfTruth, scoreForecasts } from './forecastScores'
import type { HelperRecord, ReplayedForecast } from './helperRecord'
import { leastLoss } from './leastLoss'
import { replayForecaster, type TunedSettings, tunings } from './replayForecaster'
import { causeAsOf, foundBeforeCause, type ReplayCase, replayTimeline } from './replayTimeline'
import type { RankingSettings } from './settings'

export type ReplaySettings = {
  ranking: Partial<RankingSettings>
  /** The values of k, A and m that are tried on earlier winters. */
  try: { [Name in keyof TunedSettings]: readonly number[] }
  /** Only cases whose cause is known so well are scored. */
  scored: readonly CauseStatus[]
  /** Month, 1 to 12, with which a winter's year begins: 7 north of the equator, 1 south of it. */
  winterStartsInMonth: number
}

/** The values tried are common practice, no published source. */
export const defaultReplaySettings: ReplaySettings = {
  ranking: {},
  try: { neighbours: [50, 200, Infinity], priorStrength: [5, 20, 80], findingStrength: [1, 4, 16] },
  scored: ['confirmed', 'durable'],
  winterStartsInMonth: 7,
}

type ReplayAsked = {
  catalogue: Catalogue
  cases: readonly ReplayCase[]
  settings?: Partial<ReplaySettings>
}

/**
 * How well the ranking would have done. Every case is forecast from what had been received before it was opened,
 * with the causes of other cases as they stood that day, and from its own findings said before anybody named its
 * cause. k, A and m for a winter are those with the least log loss over the winters before it, on the causes as known
 * when it began; the first winter with cases only serves to choose. Scored are the cases whose cause is, by all that
 * was ever received, of a status that counts; a contributing cause is not scored.
 *
 * @returns a problem, 'too-few-winters', when no scored case has a winter of scored cases before it
 * @throws RangeError for a catalogue that cannot be worked on, an unknown finding or value, a setting out of range
 */
export function replayHelper(asked: ReplayAsked): Result<HelperRecord> {
  const steps = replayHelperInSteps(asked)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/**
 * The same, case by case, for a device that must not stand still for as long as the whole takes: yields how many cases
 * it is through, of how many, before each of them, and returns what replayHelper does.
 */
export function* replayHelperInSteps(
  asked: ReplayAsked,
): Generator<{ through: number; of: number }, Result<HelperRecord>> {
  const { catalogue } = asked
  const settings = { ...defaultReplaySettings, ...asked.settings }
  checkCatalogue(catalogue)
  const { winterStartsInMonth } = settings
  if (!Number.isInteger(winterStartsInMonth) || winterStartsInMonth < 1 || winterStartsInMonth > 12) {
    throw new RangeError('winterStartsInMonth must be a month from 1 to 12')
  }
  const tried = tunings(settings.try)
  const cases = asked.cases.toSorted((a, b) => a.openedAt - b.openedAt || (a.id < b.id ? -1 : 1))
  const timeline = replayTimeline(catalogue, cases)
  const forecaster = replayForecaster(catalogue, timeline.table, settings.ranking, tried)
  const counts = (cause: NamedCause | undefined) =>
    cause !== undefined && settings.scored.includes(cause.status)

  const past: { one: ReplayCase; winter: number; chanceOf: Map<string, number[]> }[] = []
  const shown: HelperRecord['winters'] = []
  const forecasts: ReplayedForecast[] = []
  const helper: Forecast[] = []
  const baseRates: Forecast[] = []
  const checklist: Forecast[] = []
  let winter: number | undefined
  let chosen: number | undefined
  for (const [at, one] of cases.entries()) {
    yield { through: at, of: cases.length }
    const opened = winterOf(one.openedAt, winterStartsInMonth)
    if (opened !== winter) {
      winter = opened
      const began = Date.UTC(opened, winterStartsInMonth - 1, 1)
      chosen = leastLoss(past, began, counts, forecaster.truthName, tried.length)
    }
    if (one.causes.length === 0) continue
    timeline.advanceTo(one.openedAt)
    const made = forecaster.forecast(at, foundBeforeCause(one), one.context ?? {})
    const named = new Set(
      one.causes.flatMap(({ says }) => (says === 'withdrawn' ? [] : [forecaster.truthName(says)])),
    )
    past.push({
      one,
      winter: opened,
      chanceOf: new Map([...named].map((name) => [name, made.chanceOf(name)])),
    })

    const truth = causeAsOf(one, Infinity)
    if (chosen === undefined || truth === undefined || !counts(truth)) continue
    const name = forecaster.truthName(truth)
    const place = forecaster.names.indexOf(name)
    if (shown.at(-1)?.winter !== opened) shown.push({ winter: opened, ...tried[chosen]! })
    const forecast = { probabilities: made.helper(chosen), truth: place }
    const byBaseRates = { probabilities: made.baseRates(tried[chosen]!), truth: place }
    const byChecklist = { probabilities: forecaster.checklist, truth: place }
    const first = forecast.probabilities.indexOf(Math.max(...forecast.probabilities))
    forecasts.push({
      caseId: one.id,
      winter: opened,
      truth: name,
      probabilityOfTruth: forecast.probabilities[place]!,
      leading: { cause: forecaster.names[first]!, probability: forecast.probabilities[first]! },
      placeOfTruth: {
        helper: placeOfTruth(forecast),
        baseRates: placeOfTruth(byBaseRates),
        checklist: placeOfTruth(byChecklist),
      },
    })
    helper.push(forecast)
    baseRates.push(byBaseRates)
    checklist.push(byChecklist)
  }
  if (forecasts.length === 0) {
    return failure(
      'too-few-winters',
      'There is no record yet. It needs cases with a confirmed cause from at least two winters: the first chooses the ' +
        'settings, the later ones are scored.',
    )
  }
  return success({
    winters: shown,
    helper: scoreForecasts(helper),
    baseRates: scoreForecasts(baseRates),
    checklist: scoreForecasts(checklist),
    forecasts,
  })
}

function winterOf(moment: number, startsInMonth: number): number {
  const date = new Date(moment)
  return date.getUTCMonth() + 1 >= startsInMonth ? date.getUTCFullYear() : date.getUTCFullYear() - 1
}
