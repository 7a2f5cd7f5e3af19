import type { CauseGroup, HowOften } from './types'

/**
 * The share of each group among all cases, before anything is looked at. Common practice, no published source: the
 * trade gives ranges (condensate 25 to 30 %, vent 20 to 25 %, hose and port 12 to 18 %, inducer 12 to 15 %,
 * electrical 8 to 10 %, intake 5 to 8 %, the switch itself 5 to 8 %, exchanger 2 to 4 %, installation and elevation
 * together 3 to 5 %), and these lie within them and add up to 1. A team's own cases outgrow them.
 */
export const shareOfGroup: Readonly<Record<CauseGroup, number>> = {
  'vent path': 0.21,
  'combustion-air path': 0.06,
  'condensate drainage': 0.26,
  inducer: 0.13,
  'hose and port': 0.14,
  'heat exchanger': 0.025,
  'electrical and control': 0.09,
  installation: 0.025,
  elevation: 0.01,
  'the switch itself': 0.05,
}

/** By how much a group's share goes to each of its causes. Common practice, no published source. */
export const weightOf: Readonly<Record<HowOften, number>> = { common: 4, occasional: 2, rare: 1 }
