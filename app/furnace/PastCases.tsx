import type { TeamFile } from '@/lib/records/fold/teamFile'
import { CaseLine } from '../cases/list/CaseLine'
import { caseRows } from '../cases/list/caseRows'
import { Empty } from '../ui/answers/Empty'
import { Sheet } from '../ui/paper/Sheet'
import styles from './furnace.module.css'

type Props = { furnaceId: string; file: TeamFile; now: string }

/** Every case of one furnace, the newest first. */
export function PastCases({ furnaceId, file, now }: Props) {
  const rows = caseRows(file).filter(({ furnace }) => furnace.id === furnaceId)
  return (
    <Sheet title="Cases">
      {rows.length === 0 ? (
        <Empty
          what="No case is on record"
          why="Nobody has recorded a complaint about this furnace."
          todo={<a href={`/cases/new?furnace=${furnaceId}`}>Open a case</a>}
        />
      ) : (
        <ul className={styles.cases}>
          {rows.map((row) => (
            <li key={row.entry.id}>
              <CaseLine {...{ row, file, now }} ofOneFurnace />
            </li>
          ))}
        </ul>
      )}
    </Sheet>
  )
}
