import { type ChartPoint, controlChart } from '@/lib/core/callbacks/controlChart'
import type { MonthOfJobs } from '@/lib/core/callbacks/monthlyRates'
import { type CaseShare, caseShare } from './caseShare'
import { cameBack, type Job } from './job'

/** The jobs done in one month, and those of them that came back so far. Open: its count will grow. */
export type MonthFigure = Omit<MonthOfJobs, 'jobs'> & {
  cameBack: CaseShare
  /** Those of them that were repaired and proven. */
  fixesThatCameBack: CaseShare
  /** Where it lies within its limits; left out for a month that is open or has no jobs. */
  point?: Exclude<ChartPoint, { verdict: 'nothing counted' }>
  /** So few jobs that one callback can lie above the limit by itself: the limits are rough there. */
  roughLimits: boolean
}

/** Expected callbacks below which the limits of a month are rough (common practice, no published source). */
const fewestExpected = 5

/** The control chart: shares by month. Only settled months make points and limits, and so the centre. */
export function monthFigures(months: readonly MonthOfJobs<Job>[]): MonthFigure[] {
  const shares = months.map(({ jobs, ...month }) => ({
    ...month,
    cameBack: caseShare(jobs, cameBack),
    fixesThatCameBack: caseShare(
      jobs.filter(({ isFix }) => isFix),
      cameBack,
    ),
  }))
  const charted = shares.filter((month) => month.standing === 'settled' && month.cameBack.of > 0)
  const points = new Map(
    controlChart(
      'p',
      charted.map((month) => month.cameBack),
    ).map((point, place) => [charted[place]!.month, point]),
  )
  return shares.map((month) => {
    const point = points.get(month.month)
    return point === undefined || point.verdict === 'nothing counted'
      ? { ...month, roughLimits: false }
      : { ...month, point, roughLimits: point.of * point.centre < fewestExpected }
  })
}
