import { toPascals } from '@/lib/core/pressure'
import type { GuardSettings } from './types'

/** What is taken when the team has set nothing else. All figures are common practice, no published source. */
export const usualGuardSettings: GuardSettings = {
  listers: ['data plate', 'current literature', 'older literature', 'factory support', 'distributor'],
  nearLimitPascals: toPascals(0.1, 'inH2O'),
  assumedTolerancePascals: toPascals(0.05, 'inH2O'),
  pulls: 3,
  dropVolts: 0.5,
  dropMeasurements: 3,
}
