import { accuracyForms } from '@/lib/catalogue/accuracyForms'
import { formatPressure, fromPascals, type PressureUnit, toPascals, unitLabel } from '@/lib/core/pressure'
import { gaugeHalfWidth, usualReadingSettings } from '@/lib/core/reading'
import type { GaugeBody } from '@/lib/records/kinds/gauge'
import { sayDate } from '../ui/words/sayDate'

type Accuracy = Pick<
  GaugeBody,
  'percentOfReading' | 'counts' | 'percentOfSpan' | 'combine' | 'spanPascals' | 'resolutionPascals' | 'unit'
>

/** A pressure of the gauge's own scale with all its digits, float dust apart: `0.001 in. w.c.`. */
export const onItsScale = (pascals: number, unit: PressureUnit): string =>
  `${Number(fromPascals(pascals, unit).toPrecision(10))} ${unitLabel[unit]}`

/** Which of the accuracy forms a gauge's figures make. */
export const accuracyFormOf = (gauge: Accuracy) =>
  accuracyForms.find(
    ({ fields, combine }) =>
      (['percentOfReading', 'counts', 'percentOfSpan'] as const).every(
        (field) => fields.includes(field) === (gauge[field] !== undefined),
      ) &&
      (fields.length < 2 || combine === gauge.combine),
  )

/** A gauge's accuracy as its sheet would print it: `± 1 % of reading, plus 2 counts`. */
export function accuracyWords(gauge: Accuracy): string {
  const parts = [
    gauge.percentOfReading === undefined ? undefined : `${gauge.percentOfReading} % of reading`,
    gauge.counts === undefined ? undefined : `${gauge.counts} counts`,
    gauge.percentOfSpan === undefined ? undefined : `${gauge.percentOfSpan} % of full scale`,
  ].filter((part) => part !== undefined)
  if (parts.length === 0) return 'only the resolution is known'
  const greater = gauge.combine === 'greater' && parts.length > 1
  return `± ${parts.join(greater ? ' or ' : ', plus ')}${greater ? ', whichever is greater' : ''}`
}

/** A small pressure with two figures that say something. */
function withTwoFigures(pascals: number, unit: PressureUnit): string {
  const size = Math.abs(fromPascals(pascals, unit))
  const decimals = size === 0 ? 0 : Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(size))))
  return formatPressure(pascals, unit, decimals)
}

/** A reading that is usual at a pressure switch, or the middle of the scale where that is beyond it. */
const exampleReading = (gauge: Accuracy): number => Math.min(toPascals(0.6, 'inH2O'), gauge.spanPascals / 2)

/**
 * What a gauge's accuracy comes to at an example reading, in sentences; also whether that is too coarse beside the
 * tolerance that a switch usually has (common practice, no published source).
 */
export function exampleWords(gauge: Accuracy): string[] {
  const reading = exampleReading(gauge)
  const width = gaugeHalfWidth({ ...gauge, zeroed: true }, reading)
  const tolerance = usualReadingSettings.assumedTolerancePascals
  return [
    `When it shows ${formatPressure(reading, gauge.unit)}, the pressure is within ± ${withTwoFigures(width.pascals, gauge.unit)} of that.`,
    ...(width.assumed
      ? [
          'That is half its smallest step, taken because nothing else is known. Resolution is no accuracy: look for its sheet.',
        ]
      : []),
    ...(width.pascals >= tolerance
      ? [
          `That is as much as the tolerance of a switch usually is (± ${formatPressure(tolerance, gauge.unit)}, common practice). With this gauge many readings will be too close to call.`,
        ]
      : []),
  ]
}

const dayMs = 24 * 60 * 60 * 1000
const soonDays = 30

/**
 * How a gauge stands with its calibration, in a sentence. A gauge past its date is shown, never blocked.
 * @param due  the last day of its calibration, year-month-day
 * @param today  year-month-day
 */
export function calibrationWords(due: string | undefined, today: string): string {
  if (due === undefined) return 'No calibration date is on file. It is taken to read as its sheet says.'
  const days = Math.round((Date.parse(due) - Date.parse(today)) / dayMs)
  if (days < 0) {
    return `Past due: its calibration ran out on ${sayDate(due)}. Its readings count for less, and no switch may be called faulty on them.`
  }
  return days <= soonDays
    ? `Due ${sayDate(due)}: ${days === 0 ? 'today' : days === 1 ? 'tomorrow' : `in ${days} days`}.`
    : `Due ${sayDate(due)}.`
}
