import type { PressureUnit } from '@/lib/core/pressure'
import { gaugeHalfWidth } from '@/lib/core/reading'
import type { Entry } from '@/lib/records/fold/entry'
import type { GaugeBody } from '@/lib/records/kinds/gauge'
import { instrumentOf } from '@/lib/records/view/case/instrument'
import type { JudgedReading } from '@/lib/records/view/case/judgedReading'
import type { Column } from '../../ui/waterColumn/column'
import { onTheClock } from './momentWords'

/**
 * A recorded reading as a water column, its limits as they stood that day. Undefined where the gauge is not on
 * record: nobody knows how far off it was, so no edge could be drawn honestly.
 */
export function readingColumn(
  { entry, comparison }: JudgedReading,
  gauge: Entry<GaugeBody> | undefined,
  unit: PressureUnit,
): Column | undefined {
  if (gauge === undefined) return undefined
  const { body, at } = entry
  const judgement = comparison.ok ? (comparison.value.run ?? comparison.value.start) : undefined
  const pascals = judgement?.judgedPascals ?? body.samples.at(-1)!
  return {
    unit,
    sense: body.sense,
    marks: (body.against ?? []).flatMap(({ action, level, rivals = [], ...shown }) =>
      [shown, ...rivals].map(({ limit, pascals, toleranceAbove, toleranceBelow }) => ({
        action,
        limit,
        pascals,
        ...(toleranceAbove === undefined ? {} : { toleranceAbove }),
        ...(toleranceBelow === undefined ? {} : { toleranceBelow }),
        standing: { level, asOf: onTheClock(at).day },
      })),
    ),
    reading: {
      pascals,
      uncertaintyPascals:
        judgement?.standardUncertaintyPascals ?? rectangular(gauge.body, body.zeroed, pascals),
    },
    earlier: body.samples.slice(0, -1).map((sample) => ({ pascals: sample })),
  }
}

/** The standard uncertainty of a half-width within which all values are equally likely (JCGM 100, 4.3.7). */
const rectangular = (gauge: GaugeBody, zeroed: boolean, pascals: number): number =>
  gaugeHalfWidth(instrumentOf(gauge, zeroed), pascals).pascals / Math.sqrt(3)
