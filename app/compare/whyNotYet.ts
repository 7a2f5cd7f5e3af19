import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { GaugeBody } from '@/lib/records/kinds/gauge'
import type { FormReading } from './readingForm'

type Typed = {
  read: FormReading
  gauge: GaugeBody | undefined
  /** The person looked again at an unusual size, and it stands. */
  lookedAgain: boolean
  unit: PressureUnit
}

/**
 * What stands between what was typed and a reading that can be held against anything, as sentences in the order of
 * the form; empty when nothing does. `doubted` says that only an unusual size is in the way, which a second look
 * settles.
 */
export function whyNotYet({ read, gauge, lookedAgain, unit }: Typed): { why: string[]; doubted: boolean } {
  const noGauge =
    gauge === undefined ? ['Choose the gauge: without its accuracy no reading can clear a limit.'] : []
  if ('gaps' in read) return { why: [...read.gaps.map(({ message }) => message), ...noGauge], doubted: false }
  const beyond =
    gauge !== undefined && Math.max(...read.reading.samples) > gauge.spanPascals
      ? [
          `That is more than this gauge can show: it ends at ${formatPressure(gauge.spanPascals, unit)}. Look at the decimal point and the unit.`,
        ]
      : []
  const doubts = lookedAgain ? [] : read.warnings
  return { why: [...noGauge, ...beyond, ...doubts], doubted: doubts.length > 0 }
}
