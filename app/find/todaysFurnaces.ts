import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseBody } from '@/lib/records/kinds/case'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { caseFileOf } from '@/lib/records/view/case/caseFile'
import { type CaseStanding, caseStanding, isOver } from '@/lib/records/view/case/caseStanding'
import { caseViewIn } from '../cases/list/caseViewIn'

/** A furnace that somebody is at today, or has to go back to, with the case that says so. */
type TodaysFurnace = {
  furnace: Entry<FurnaceBody>
  open: Entry<CaseBody>
  standing: CaseStanding
  /** The day of the newest visit, year-month-day; none while nobody has been there. */
  visitOn: string | undefined
}

/** No more than a phone shows without scrolling far. */
const most = 8

/**
 * An ending can be found wanting only by judging all readings of its case, which takes too long for every case of the
 * team on the screen that opens first. It is done for cases this new, in days; the list of cases does it for all.
 */
const recentDays = 30
const dayMs = 86_400_000

/**
 * The furnaces of cases with a visit today or still open, the newest visit first, each once.
 * @param today the day by the clock of this device, year-month-day
 */
export function todaysFurnaces(file: TeamFile, today: string): TodaysFurnace[] {
  const found = new Map<string, TodaysFurnace>()
  for (const { id, visitOn } of byNewestVisit(file)) {
    if (found.size === most) break
    const ofCase = caseFileOf(file, id)
    if (ofCase === undefined || found.has(ofCase.furnace.id)) continue
    const recent = Date.parse(today) - Date.parse(visitOn ?? ofCase.entry.at) < recentDays * dayMs
    const standing = recent ? caseViewIn(file, id)!.standing : caseStanding(ofCase, 0)
    if (visitOn !== today && isOver(standing)) continue
    found.set(ofCase.furnace.id, { furnace: ofCase.furnace, open: ofCase.entry, standing, visitOn })
  }
  return [...found.values()]
}

/** Every case with the day of its newest visit; a case that nobody has been to yet counts from the day it was opened. */
function byNewestVisit(file: TeamFile): { id: string; visitOn: string | undefined }[] {
  const newest = new Map<string, string>()
  for (const { body } of counting(file.visits)) {
    const id = file.keptId(body.caseId)
    if (body.on > (newest.get(id) ?? '')) newest.set(id, body.on)
  }
  return counting(file.cases)
    .map(({ id, at }) => ({ id, at, visitOn: newest.get(id), day: newest.get(id) ?? at.slice(0, 10) }))
    .sort((one, other) =>
      one.day === other.day ? (one.at < other.at ? 1 : -1) : one.day < other.day ? 1 : -1,
    )
}
