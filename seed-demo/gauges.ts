import { toPascals } from '@/lib/core/pressure'
import type { GaugeBody } from '@/lib/records/kinds/gauge'

const inchesOf = (value: number) => toPascals(value, 'inH2O')

/** The team's four manometers, one of each form in which a sheet states its accuracy; the third is past its date. */
export const gauges: readonly GaugeBody[] = [
  {
    name: 'G-01 yellow',
    unit: 'inH2O',
    percentOfReading: 1,
    counts: 2,
    combine: 'plus',
    spanPascals: inchesOf(16),
    resolutionPascals: inchesOf(0.001),
    calibrationDue: '2027-03-31',
    note: 'Ott’s. Thousandths: let it settle.',
  },
  {
    name: 'G-02 case',
    unit: 'Pa',
    percentOfSpan: 0.5,
    combine: 'plus',
    spanPascals: 2000,
    resolutionPascals: 1,
    calibrationDue: '2027-01-31',
    note: 'Reads pascals only.',
  },
  {
    name: 'G-03 orange',
    unit: 'inH2O',
    percentOfReading: 1.5,
    percentOfSpan: 0.4,
    combine: 'greater',
    spanPascals: inchesOf(8),
    resolutionPascals: inchesOf(0.01),
    calibrationDue: '2026-08-31',
    note: 'Calibration overdue since August. Sent-away box is on the shelf in Dunmarrow.',
  },
  {
    name: 'G-04 water tube',
    unit: 'inH2O',
    combine: 'plus',
    spanPascals: inchesOf(12),
    resolutionPascals: inchesOf(0.1),
    note: 'No sheet. Marks every tenth, so read between them with care.',
  },
]
