import type { Instrument } from '@/lib/core/reading'
import type { GaugeBody } from '@/lib/records/kinds/gauge'

/** A gauge of the register, with whether it was zeroed before this reading. */
export const instrumentOf = (gauge: GaugeBody, zeroed: boolean): Instrument => ({
  percentOfReading: gauge.percentOfReading,
  counts: gauge.counts,
  percentOfSpan: gauge.percentOfSpan,
  combine: gauge.combine,
  spanPascals: gauge.spanPascals,
  resolutionPascals: gauge.resolutionPascals,
  zeroed,
  calibrationDue: gauge.calibrationDue,
})
