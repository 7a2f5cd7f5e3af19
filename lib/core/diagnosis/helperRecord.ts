import type { Scores } from './forecastScores'
import type { TunedSettings } from './replayForecaster'

/** One forecast of the record, with what is needed to open the case behind it. */
export type ReplayedForecast = {
  caseId: string
  winter: number
  truth: string
  probabilityOfTruth: number
  /** The cause that the helper put first. */
  leading: { cause: string; probability: number }
  /** Where each forecaster put the true cause, counted from 1. */
  placeOfTruth: { helper: number; baseRates: number; checklist: number }
}

export type HelperRecord = {
  /** The winters shown, by the year in which each began, with the settings that the winters before it chose. */
  winters: ({ winter: number } & TunedSettings)[]
  helper: Scores
  /** The causes' shares among the cases known by then, whatever was found. */
  baseRates: Scores
  /** The fixed checklist: its i-th cause gets a share in proportion to 1/i (common practice, no published source). */
  checklist: Scores
  forecasts: ReplayedForecast[]
}
