import type { EndingWay } from '@/lib/records/kinds/ending'
import type { CaseFile, VisitFile } from './caseFile'
import { noticeOfEnding } from './leftOff'

/** How a case stands, in the word that the list of cases shows. */
export type CaseStanding = 'being worked on' | 'endings disagree' | 'left off' | 'not finished' | EndingWay

/** Ways of ending after which nothing more is to be done on the case. */
const closing: readonly EndingWay[] = ['repaired and proven', 'no fault found', 'repair declined']

/**
 * How a case stands: by its newest visit, and by the shut-down notices of the furnace. An ending of it that left the
 * furnace off without a notice leaves it off until a notice is written and lifted.
 * @param missing how many things the newest ending still lacks (`endingNeeds`)
 */
export function caseStanding(file: CaseFile, missing: number): CaseStanding {
  const { notices, entry } = file
  const standing = notices.filter(({ lifting }) => lifting === undefined)
  if (standing.some((notice) => notice.entry.body.caseId === entry.id)) return 'left off'
  const own = ownStanding(file, missing)
  if (own !== 'endings disagree' && file.leftOffUnnoticed.some(({ body }) => body.caseId === entry.id))
    return 'left off'
  // A notice that was written on no case is not about one that was over.
  return standing.some((notice) => notice.entry.body.caseId === undefined) && !isOver(own) ? 'left off' : own
}

function ownStanding(file: CaseFile, missing: number): CaseStanding {
  const newest = file.visits.at(-1)
  if (newest === undefined || newest.endings.length === 0) return 'being worked on'
  if (endingsDisagree(newest)) return 'endings disagree'
  const { at, body } = newest.endings.at(-1)!
  const { how, noticeId } = body
  const notice = noticeOfEnding(file.notices, { noticeId, visitAt: newest.entry.at, endedAt: at })
  // Whoever lifted the notice runs the furnace again, and the case goes on.
  if (how === 'left off' && notice?.lifting !== undefined) return 'being worked on'
  return missing > 0 ? 'not finished' : how
}

/** Whether the case is over: nobody has to go there again for it. */
export const isOver = (standing: CaseStanding): boolean => (closing as readonly string[]).includes(standing)

/** Two people ended the same visit: both records are kept until all but one are withdrawn. */
export const endingsDisagree = ({ endings }: VisitFile): boolean => endings.length > 1
