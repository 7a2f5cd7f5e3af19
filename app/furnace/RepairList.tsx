import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { setpointQuery } from '../setpoint/setpointAddress'
import { Empty } from '../ui/answers/Empty'
import { Sheet } from '../ui/paper/Sheet'
import { sayDate } from '../ui/words/sayDate'

type Props = { furnaceId: string; file: TeamFile; names: ReadonlyMap<string, string> }

/** The repairs of one furnace, the newest first. */
export function RepairList({ furnaceId, file, names }: Props) {
  const repairs = counting(file.repairs)
    .filter(({ body }) => file.keptId(body.furnaceId) === furnaceId)
    .toSorted((one, other) => (one.body.on < other.body.on ? 1 : -1))
  return (
    <Sheet title="Repairs">
      {repairs.length === 0 && (
        <Empty
          what="No repair is on record"
          why="Nobody has recorded one for this furnace."
          todo={<a href={`/furnace/repair?furnace=${furnaceId}`}>Record a repair</a>}
        />
      )}
      <ul>
        {repairs.map(({ id, body, by }) => {
          const part =
            body.fittedPart === undefined ? undefined : file.parts.get(file.keptId(body.fittedPart))
          const position =
            body.positionId === undefined ? undefined : file.positions.get(file.keptId(body.positionId))
          return (
            <li key={id}>
              {sayDate(body.on)}: <a href={`/record?id=${id}`}>{body.done}</a>
              {position !== undefined && `, ${position.body.name}`}
              {part !== undefined && (
                <>
                  , factory part <span translate="no">{part.body.partNumber}</span>
                </>
              )}
              . Recorded by {names.get(by) ?? 'somebody whose name is not on this device'}.{' '}
              {part !== undefined && position !== undefined && (
                <a href={`/compare?${setpointQuery({ positionId: position.id, furnaceId })}`}>
                  Prove it: compare a reading
                </a>
              )}
            </li>
          )
        })}
      </ul>
    </Sheet>
  )
}
