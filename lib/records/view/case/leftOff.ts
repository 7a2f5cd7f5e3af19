import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody } from '@/lib/records/kinds/ending'
import { groupedBy } from '../grouped'
import { oldestFirst } from '../ofFurnace'
import { type Notice, noticesOf, standingNotice } from './notices'

/** What is asked about an ending that left a furnace off. */
type LeftOff = {
  noticeId: string | undefined
  /** When its visit began, ISO 8601; undefined where that is not on this device. */
  visitAt: string | undefined
  /** When the visit ended; left out while it goes on: then a lifted notice is of what was before. */
  endedAt?: string
}

/**
 * The notice under which a visit left its furnace off: the one that the ending names, or else the newest that was
 * written since the visit began, also after it. One that was lifted before the visit ended is about something else.
 * @param notices of the furnace, oldest first
 */
export function noticeOfEnding(
  notices: readonly Notice[],
  { noticeId, visitAt, endedAt }: LeftOff,
): Notice | undefined {
  const stoodThen = notices.filter(
    ({ lifting }) => lifting === undefined || (endedAt !== undefined && lifting.at >= endedAt),
  )
  return (
    stoodThen.find(({ entry }) => entry.id === noticeId) ??
    stoodThen.findLast(({ entry }) => visitAt !== undefined && entry.at >= visitAt)
  )
}

/**
 * Endings that left a furnace off and have no notice that could be lifted, oldest first: it is left off all the same,
 * until the notice is written and lifted. That the case was withdrawn since lets nobody light it.
 */
export function leftOffWithoutNotice(file: TeamFile, furnaceId: string): Entry<EndingBody>[] {
  const endings = leftOffEndings(file).get(file.keptId(furnaceId)) ?? []
  if (endings.length === 0) return []
  const notices = noticesOf(file, furnaceId)
  return endings.filter(
    ({ at, body }) =>
      noticeOfEnding(notices, {
        noticeId: body.noticeId,
        visitAt: file.visits.get(body.visitId)?.at,
        endedAt: at,
      }) === undefined,
  )
}

/** Whether a furnace is left off now: by a notice that nothing has lifted, or by an ending without any. */
export const isLeftOff = (file: TeamFile, furnaceId: string): boolean =>
  standingNotice(file, furnaceId) !== undefined || leftOffWithoutNotice(file, furnaceId).length > 0

const indexes = new WeakMap<TeamFile, ReadonlyMap<string, Entry<EndingBody>[]>>()

/** The endings that left a furnace off, by furnace, oldest first; sorted once for a whole team file. */
function leftOffEndings(file: TeamFile): ReadonlyMap<string, Entry<EndingBody>[]> {
  const known = indexes.get(file)
  if (known !== undefined) return known
  const endings = counting(file.endings).filter(({ body }) => body.how === 'left off')
  const byFurnace = groupedBy(endings.sort(oldestFirst), ({ body }) => {
    const ofCase = file.cases.get(file.keptId(body.caseId))
    return ofCase && file.keptId(ofCase.body.furnaceId)
  })
  indexes.set(file, byFurnace)
  return byFurnace
}
