import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { furnacesOf } from '@/lib/records/view/log/furnacesOf'
import type { LogFilters } from './logFilters'

export type LogRow = { kind: string; entry: Entry<Record<string, unknown>>; seq?: number }

/** Every record that this person may see, the newest first: what waits on this device above all. */
export const logRows = (file: TeamFile): LogRow[] => [...file.records.values()].reverse()

/** The rows that every filter lets through, in their order. The dearest question is asked last. */
export function rowsThatMatch(
  rows: readonly LogRow[],
  { person, kind, furnace, from, to }: LogFilters,
  file: TeamFile,
): readonly LogRow[] {
  if (![person, kind, furnace, from, to].some((filter) => filter !== '')) return rows
  const about = furnacesOf(file)
  const wanted = file.keptId(furnace)
  return rows.filter(({ kind: itsKind, entry }) => {
    const said = entry.at.slice(0, 'yyyy-mm-dd'.length)
    return (
      (kind === '' || itsKind === kind) &&
      (person === '' || entry.by === person) &&
      (from === '' || said >= from) &&
      (to === '' || said <= to) &&
      (furnace === '' || about(entry.id).has(wanted))
    )
  })
}
