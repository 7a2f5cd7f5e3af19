import type { CaseFile } from '../case/caseFile'

/**
 * Minutes of work on a case, over all its visits; undefined where nobody said any. A visit's own are those that its
 * ending says, or else those of its repairs: what an ending says is of the whole visit.
 */
export function minutesOf({ visits, repairs }: Pick<CaseFile, 'visits' | 'repairs'>): number | undefined {
  const said = visits.flatMap(({ entry, endings }) => {
    const ofVisit = endings.at(-1)?.body.minutes
    if (ofVisit !== undefined) return [ofVisit]
    return repairs.flatMap(({ body }) =>
      body.visitId === entry.id && body.minutes !== undefined ? [body.minutes] : [],
    )
  })
  return said.length === 0 ? undefined : said.reduce((sum, minutes) => sum + minutes, 0)
}
