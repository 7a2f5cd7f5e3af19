import { type CallbackWindow, windowEnd } from './callbackWindow'
import type { CallbackCase } from './cases'
import { jobOutcomes } from './jobOutcomes'

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

/**
 * Callbacks by the month in which the job was done. A month is settled when the window of a job done at its very end
 * has run out.
 *
 * @param now milliseconds since 1970, UTC; what happened later is left out
 * @returns every month from that of the first completed job to the present one, those without jobs too
 * @example jobs of January, 30 days: open until 2 March, settled from then on
 */
export function monthlyRates(
  cases: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
): MonthlyRate[] {
  const outcomes = jobOutcomes(cases, window, now)
  const [first] = outcomes
  if (first === undefined) return []
  const start = new Date(first.endedAt)
  const months: MonthlyRate[] = []
  for (let month = start.getUTCMonth(); ; month++) {
    const begins = Date.UTC(start.getUTCFullYear(), month)
    if (begins > now) return months
    const ends = Date.UTC(start.getUTCFullYear(), month + 1)
    const settlesAt = windowEnd(ends, window)
    const jobs = outcomes.filter(({ endedAt }) => endedAt >= begins && endedAt < ends)
    const cameBack = jobs.filter(({ became }) => became === 'came back')
    months.push({
      month: new Date(begins).toISOString().slice(0, 7),
      jobs: jobs.length,
      cameBack: cameBack.length,
      fixes: jobs.filter((job) => job.isFix).length,
      fixesThatCameBack: cameBack.filter((job) => job.isFix).length,
      standing: settlesAt <= now ? 'settled' : 'open',
      settlesAt,
    })
  }
}

/** The months that make points of a chart. */
export const settledMonths = (months: readonly MonthlyRate[]): MonthlyRate[] =>
  months.filter(({ standing }) => standing === 'settled')
