import type { PressureUnit } from '@/lib/core/pressure'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { BaselineTable } from './baseline/BaselineTable'
import { baselinesOf } from './baseline/baselinesOf'

type Props = {
  furnaceId: string
  file: TeamFile
  unit: PressureUnit
  names: ReadonlyMap<string, string>
}

/** What this furnace showed when it was healthy: what "expected" means for it. */
export function Baselines({ furnaceId, file, unit, names }: Props) {
  const record = `/furnace/baseline?id=${furnaceId}`
  const lines = baselinesOf(file, furnaceId)
  return (
    <Sheet
      title="Baselines"
      foot={lines.length > 0 && <ButtonLink href={record}>Record another baseline</ButtonLink>}
    >
      <BaselineTable
        caption="Readings of this furnace when it was healthy"
        lines={lines}
        {...{ file, unit, names }}
        empty={
          <Empty
            what="No baseline is on record"
            why="Without one nobody can tell whether a reading is higher than this furnace should show."
            todo={<a href={record}>Record one at the annual service, while it runs well</a>}
          />
        }
      />
    </Sheet>
  )
}
