import { buildFindIndex, type FindIndex, find } from '@/lib/core/find'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { isOver } from '@/lib/records/view/case/caseStanding'
import { causeOf } from '@/lib/records/view/case/pastCases'
import { nearFrom } from '../../find/resultWords'
import type { CaseFilters, StandingFilter } from './caseFilters'
import { type CaseRow, textsOf } from './caseRows'
import { caseViewIn } from './caseViewIn'

/** Where the cases are looked up, made once for a team file. */
export type CaseSearch = { file: TeamFile; now: string; index: FindIndex }

export const caseSearch = (file: TeamFile, rows: readonly CaseRow[], now: string): CaseSearch => ({
  file,
  now,
  index: buildFindIndex(rows.map((row) => ({ key: row.entry.id, texts: textsOf(row) }))),
})

/**
 * The rows that every filter lets through, in the order in which they came. What can be told from the record alone is
 * asked first, so that standing and cause are worked out only for what is left.
 */
export function casesThatMatch(
  rows: readonly CaseRow[],
  filters: CaseFilters,
  { file, now, index }: CaseSearch,
): CaseRow[] {
  const holding = filters.typed.trim() === '' ? undefined : holders(index, filters.typed, rows.length)
  return rows.filter(
    (row) =>
      (holding === undefined || holding.has(row.entry.id)) &&
      matchesRecord(row, filters, file) &&
      matchesStanding(row, filters.standing, file) &&
      matchesCause(row, filters, file, now),
  )
}

/** The cases of which a text holds what is typed. One that is only near it is another case. */
const holders = (index: FindIndex, typed: string, most: number): Set<string> =>
  new Set(
    find(index, typed, Math.max(1, most))
      .filter(({ score }) => score < nearFrom)
      .map(({ key }) => key),
  )

function matchesRecord(
  { entry, furnace }: CaseRow,
  { range, branch, from, to }: CaseFilters,
  file: TeamFile,
): boolean {
  const opened = entry.at.slice(0, 'yyyy-mm-dd'.length)
  const { rangeId } = furnace.body
  return (
    (range === '' || (rangeId !== undefined && file.keptId(rangeId) === file.keptId(range))) &&
    (branch === '' || furnace.body.branch === branch) &&
    (from === '' || opened >= from) &&
    (to === '' || opened <= to)
  )
}

function matchesStanding({ entry }: CaseRow, wanted: StandingFilter | '', file: TeamFile): boolean {
  if (wanted === '') return true
  const standing = caseViewIn(file, entry.id)?.standing
  if (standing === undefined) return false
  if (wanted === 'open') return !isOver(standing)
  return wanted === 'over' ? isOver(standing) : standing === wanted
}

function matchesCause(
  { entry }: CaseRow,
  { cause, known }: CaseFilters,
  file: TeamFile,
  now: string,
): boolean {
  if (cause === '' && known === '') return true
  const view = caseViewIn(file, entry.id)
  const named = view && causeOf(file, view, now)
  return (
    named !== undefined &&
    (cause === '' || named.main === cause || named.contributing === cause) &&
    (known === '' || named.status === known)
  )
}
