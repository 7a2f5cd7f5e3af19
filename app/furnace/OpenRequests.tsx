import type { TeamFile } from '@/lib/records/fold/teamFile'
import { openRequests } from '@/lib/records/view/setpoint'
import { Sheet } from '../ui/paper/Sheet'
import { sayMoment } from '../ui/words/sayDate'

type Props = { furnaceId: string; file: TeamFile; names: ReadonlyMap<string, string> }

/** The ratings that somebody has asked for at this furnace and that nobody has answered yet. */
export function OpenRequests({ furnaceId, file, names }: Props) {
  const requests = openRequests(file).filter(
    ({ body }) => body.furnaceId !== undefined && file.keptId(body.furnaceId) === furnaceId,
  )
  if (requests.length === 0) return null
  return (
    <Sheet title="Asked for and not answered yet" foot={<a href="/phone-desk">See the Phone desk</a>}>
      <ul>
        {requests.map(({ id, body, by, at }) => (
          <li key={id}>
            <a href={`/record?id=${id}`}>
              The rating of {switchNamed(file, body.positionId, body.positionName)}
            </a>
            , asked by {names.get(by) ?? 'somebody whose name is not on this device'}, {sayMoment(at)}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

const switchNamed = (file: TeamFile, positionId: string | undefined, inWords: string | undefined): string =>
  (positionId === undefined ? undefined : file.positions.get(file.keptId(positionId))?.body.name) ??
  inWords ??
  'a switch that was not named'
