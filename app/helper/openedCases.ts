import type { ReplayedForecast } from '@/lib/core/diagnosis'

/** The forecasters that are compared, by the name that the record has for them. */
export const forecasters = {
  helper: 'The helper',
  baseRates: 'The base rates alone',
  checklist: 'The fixed checklist',
} as const
export type Forecaster = keyof typeof forecasters

/** The cases behind one figure: those that it counts, and the rest of those that it is out of. */
export type Opened = { key: string; title: string; counted: ReplayedForecast[]; others: ReplayedForecast[] }

export function opened(
  key: string,
  title: string,
  forecasts: readonly ReplayedForecast[],
  isCounted: (forecast: ReplayedForecast) => boolean,
): Opened {
  return {
    key,
    title,
    counted: forecasts.filter(isCounted),
    others: forecasts.filter((forecast) => !isCounted(forecast)),
  }
}

/** Whether a forecaster had the true cause among its first so many. */
export const isAmong =
  (whose: Forecaster, places: number) =>
  ({ placeOfTruth }: ReplayedForecast): boolean =>
    placeOfTruth[whose] <= places
