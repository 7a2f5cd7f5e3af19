import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { leftOffWithoutNotice } from '../case/leftOff'
import { noticesOf } from '../case/notices'

/** A furnace that may not be lit, and since when. */
export type FurnaceLeftOff = {
  furnace: Entry<FurnaceBody>
  /** ISO 8601. */
  since: string
  /** The notice; left out where an ending left it off and no notice was written. */
  noticeId?: string
  /** The case whose ending left it off without a notice. */
  caseId?: string
  found?: string
}

/** Furnaces that are left off now: first those without a notice, because nothing hangs there, then the longest off. */
export function furnacesLeftOff(file: TeamFile): FurnaceLeftOff[] {
  return counting(file.furnaces)
    .flatMap((furnace): FurnaceLeftOff[] => {
      const [bare] = leftOffWithoutNotice(file, furnace.id)
      if (bare !== undefined) return [{ furnace, since: bare.at, caseId: file.keptId(bare.body.caseId) }]
      const notice = noticesOf(file, furnace.id).find(({ lifting }) => lifting === undefined)?.entry
      return notice === undefined
        ? []
        : [{ furnace, since: notice.at, noticeId: notice.id, found: notice.body.found }]
    })
    .toSorted(
      (a, b) =>
        Number(a.noticeId !== undefined) - Number(b.noticeId !== undefined) || (a.since < b.since ? -1 : 1),
    )
}
