import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseBody } from '@/lib/records/kinds/case'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'

/** A case as the list knows it before anything has to be worked out. */
export type CaseRow = { entry: Entry<CaseBody>; furnace: Entry<FurnaceBody> }

/** The cases that count, the newest first. One whose furnace has not reached this device yet is left out. */
export function caseRows(file: TeamFile): CaseRow[] {
  return counting(file.cases)
    .flatMap((entry) => {
      const furnace = file.furnaces.get(file.keptId(entry.body.furnaceId))
      return furnace === undefined ? [] : [{ entry, furnace }]
    })
    .sort(newestFirst)
}

const newestFirst = ({ entry: one }: CaseRow, { entry: other }: CaseRow): number =>
  one.at === other.at ? (one.id < other.id ? 1 : -1) : one.at < other.at ? 1 : -1

/** What a case is looked for by. */
export const textsOf = ({ entry, furnace }: CaseRow): string[] =>
  [furnace.body.siteLabel, furnace.body.model, furnace.body.serial ?? '', entry.body.complaint].filter(
    (text) => text !== '',
  )
