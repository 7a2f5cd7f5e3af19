import { type CallbackWindow, windowEnd } from './callbackWindow'
import type { CallbackCase } from './cases'
import { type JobOutcome, jobOutcomes } from './jobOutcomes'
import { monthBegins, monthName, monthNumber } from './month'

export type MonthlyRate = {
  /** The month in which the jobs ended, UTC: '2026-01'. */
  month: string
  /** Completed jobs, and how many of them came back so far. */
  jobs: number
  cameBack: number
  /** Those of them that were repaired and proven. */
  fixes: number
  fixesThatCameBack: number
  /** 'open' while a job of that month can still come back: its count will grow, so it is no point of a chart yet. */
  standing: 'settled' | 'open'
  settlesAt: number
}

/** The jobs that were done in one month. */
export type MonthOfJobs<Job = JobOutcome> = Pick<MonthlyRate, 'month' | 'standing' | 'settlesAt'> & {
  jobs: readonly Job[]
}

/**
 * Jobs by the month in which they were done. A month is settled when the window of a job done at its very end has run
 * out.
 *
 * @param outcomes in any order; each month keeps it
 * @param now milliseconds since 1970, UTC
 * @returns every month from that of the first job to the present one, those without jobs too
 */
export function jobsByMonth<Job extends Pick<JobOutcome, 'endedAt'>>(
  outcomes: readonly Job[],
  window: CallbackWindow,
  now: number,
): MonthOfJobs<Job>[] {
  const jobs = new Map<number, Job[]>()
  for (const outcome of outcomes) {
    const month = monthNumber(outcome.endedAt)
    const ofMonth = jobs.get(month)
    if (ofMonth === undefined) jobs.set(month, [outcome])
    else ofMonth.push(outcome)
  }
  const months: MonthOfJobs<Job>[] = []
  for (let month = Math.min(...jobs.keys()); month <= monthNumber(now); month++) {
    const settlesAt = windowEnd(monthBegins(month + 1), window)
    months.push({
      month: monthName(month),
      jobs: jobs.get(month) ?? [],
      standing: settlesAt <= now ? 'settled' : 'open',
      settlesAt,
    })
  }
  return months
}

/**
 * Callbacks by the month in which the job was done, counted.
 *
 * @param now milliseconds since 1970, UTC; what happened later is left out
 * @returns as jobsByMonth
 * @example jobs of January, 30 days: open until 2 March, settled from then on
 */
export const monthlyRates = (
  cases: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
): MonthlyRate[] =>
  jobsByMonth(jobOutcomes(cases, window, now), window, now).map(({ month, jobs, standing, settlesAt }) => {
    const cameBack = jobs.filter(({ became }) => became === 'came back')
    return {
      month,
      jobs: jobs.length,
      cameBack: cameBack.length,
      fixes: jobs.filter((job) => job.isFix).length,
      fixesThatCameBack: cameBack.filter((job) => job.isFix).length,
      standing,
      settlesAt,
    }
  })

/** The months that make points of a chart. */
export const settledMonths = <Month extends Pick<MonthlyRate, 'standing'>>(
  months: readonly Month[],
): Month[] => months.filter(({ standing }) => standing === 'settled')
