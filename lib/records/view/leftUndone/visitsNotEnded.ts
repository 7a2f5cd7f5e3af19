import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import type { VisitBody } from '@/lib/records/kinds/visit'
import { oldestFirst } from '../ofFurnace'

/** A visit that nobody ended: what was done there, and how the furnace was left, is not on record. */
export type VisitNotEnded = { visit: Entry<VisitBody>; caseId: string; furnace: Entry<FurnaceBody> }

/** Visits of cases that count and have no ending that does, begun before a moment, the oldest first. */
export function visitsNotEnded(file: TeamFile, before: string): VisitNotEnded[] {
  const ended = new Set(counting(file.endings).map(({ body }) => body.visitId))
  return counting(file.visits)
    .filter((visit) => visit.at <= before && !ended.has(visit.id))
    .sort(oldestFirst)
    .flatMap((visit) => {
      const ofCase = file.cases.get(file.keptId(visit.body.caseId))
      const furnace = ofCase && file.furnaces.get(file.keptId(ofCase.body.furnaceId))
      return ofCase === undefined || furnace === undefined || ofCase.withdrawn !== undefined
        ? []
        : [{ visit, caseId: ofCase.id, furnace }]
    })
}
