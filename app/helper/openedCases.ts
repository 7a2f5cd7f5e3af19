import type { ReplayedForecast } from '@/lib/core/diagnosis'

/** The forecasters that are compared, by the name that the record has for them. */
export const forecasters = {
  helper: 'The helper',
  baseRates: 'The base rates alone',
  checklist: 'The fixed checklist',
} as const
export type Forecaster = keyof typeof forecasters

/** The cases behind one figure: those that it counts, and the rest of those that it is out of. */
export type Opened = {
  key: string
  title: string
  whose: Forecaster
  counted: ReplayedForecast[]
  others: ReplayedForecast[]
}

/** The cases of a figure that counts how often a forecaster had the true cause among its first so many. */
export const opened = (
  key: string,
  title: string,
  forecasts: readonly ReplayedForecast[],
  [whose, places]: readonly [Forecaster, number],
): Opened => ({
  key,
  title,
  whose,
  counted: forecasts.filter(({ placeOfTruth }) => placeOfTruth[whose] <= places),
  others: forecasts.filter(({ placeOfTruth }) => placeOfTruth[whose] > places),
})
