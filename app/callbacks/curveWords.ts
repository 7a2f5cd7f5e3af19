import { fewestForShare } from '@/lib/records/view/callbacks/caseShare'
import type { Curve, CurveFigure } from '@/lib/records/view/callbacks/curveFigure'
import { atRiskOn } from '@/lib/records/view/callbacks/curveFigure'

/** Days at which curves are read off, by how long somebody was watched: so far apart that their marks are, too. */
const readAt = [
  { upTo: 120, days: [30, 60, 90, 120] },
  { upTo: 450, days: [30, 90, 180, 270, 365] },
  { upTo: 1000, days: [90, 180, 365, 545, 730] },
  { upTo: Number.POSITIVE_INFINITY, days: [180, 365, 730, 1095, 1460, 2190, 2920] },
] as const

/** The longest that anybody was watched, in days. */
const longest = ({ curves }: CurveFigure): number =>
  Math.max(0, ...curves.map(({ watchedDays }) => watchedDays.at(-1) ?? 0))

/** The days at which a set of curves is read off; none while nobody was watched for a month. */
export function daysToRead(figure: CurveFigure): number[] {
  const last = longest(figure)
  return readAt.find(({ upTo }) => last <= upTo)!.days.filter((day) => day <= last)
}

/** The last day at which enough are still watched for the curve to be more than a few cases. */
export const enoughUntil = ({ watchedDays }: Curve): number => watchedDays.at(-fewestForShare) ?? 0

/** What a curve says at a day. */
export function readOff(curve: Curve, day: number) {
  const step = curve.steps.findLast(({ time }) => time <= day)
  const interval = step?.interval
  return {
    day,
    survival: step?.survival ?? 1,
    ...(interval === undefined || interval === 'not defined' ? {} : { interval }),
    atRisk: atRiskOn(curve, day),
  }
}
