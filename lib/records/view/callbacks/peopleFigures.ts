import { type ShrunkenRate, shrunkenRates } from '@/lib/core/callbacks/shrunkenRates'
import { type CaseShare, caseSharesBy } from './caseShare'
import { cameBack, type Job } from './job'

/** One person's jobs that came back, and the rate after it is drawn towards that of all. */
export type PersonFigure = {
  personId: string
  cameBack: CaseShare
  shrunken: Pick<ShrunkenRate, 'rate' | 'interval' | 'drawnTowards' | 'ownWeight'>
}

/**
 * Callbacks by who ended the job, compared only after shrinkage. In the order of the number of jobs, never of the rate:
 * a list of people by rate would be read as a list of who is to blame.
 * @param jobs of settled months
 */
export function peopleFigures(jobs: readonly Job[]): PersonFigure[] {
  const people = caseSharesBy(jobs, ({ by }) => by, cameBack).map(({ key, share }) => ({
    personId: key,
    cameBack: share,
  }))
  const rates = shrunkenRates(
    people.map(({ personId, cameBack: { count, of } }) => ({ group: personId, count, of })),
  )
  return people
    .map((person, place) => {
      const { rate, interval, drawnTowards, ownWeight } = rates[place]!
      return { ...person, shrunken: { rate, interval, drawnTowards, ownWeight } }
    })
    .sort((a, b) => b.cameBack.of - a.cameBack.of || (a.personId < b.personId ? -1 : 1))
}
