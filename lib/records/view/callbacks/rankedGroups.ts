import { type CaseShare, caseSharesBy } from './caseShare'
import { cameBack, type Job } from './job'

/** Jobs that have something in common, and how many of them came back. */
export type RankedGroup = { key: string; cameBack: CaseShare }

/**
 * Groups of jobs, those with most callbacks first; of as many, the one whose share is surely higher (the lower end of
 * its interval), because a share of few jobs is high or low by chance.
 * @param jobs of settled months
 */
export function rankedGroups(jobs: readonly Job[], keyOf: (job: Job) => string): RankedGroup[] {
  const lowest = ({ cameBack: { interval95 } }: RankedGroup) => interval95?.[0] ?? 0
  return caseSharesBy(jobs, keyOf, cameBack)
    .map(({ key, share }) => ({ key, cameBack: share }))
    .sort(
      (a, b) =>
        b.cameBack.count - a.cameBack.count ||
        lowest(b) - lowest(a) ||
        b.cameBack.of - a.cameBack.of ||
        (a.key < b.key ? -1 : 1),
    )
}
