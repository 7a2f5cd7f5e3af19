import { toPascals } from '@/lib/core/pressure'
import type { ReadingSettings } from './types'

/**
 * What is taken when the team has set nothing else; only the time is left to the caller. All of it is common
 * practice, no published source.
 */
export const usualReadingSettings: Omit<ReadingSettings, 'now'> = {
  assumedTolerancePascals: toPascals(0.05, 'inH2O'),
  usualScatterPascals: toPascals(0.01, 'inH2O'),
  flutterHalfSpreadPascals: toPascals(0.02, 'inH2O'),
  thinGuideline: { pascals: toPascals(0.1, 'inH2O'), source: 'common practice, no published source' },
  restZeroLimitPascals: toPascals(0.01, 'inH2O'),
  steadySeconds: 60,
  weatherShare: 0.15,
  mostStarts: 10,
}
