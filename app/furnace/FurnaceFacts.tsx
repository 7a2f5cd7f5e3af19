import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { furnaceWords, rangeWords } from '../equipment/candidates'
import { Facts } from '../ui/paper/Facts'
import { AsPrinted } from '../ui/words/AsPrinted'
import { heightWords } from './heightWords'

const missing = 'not on record'

/** What is on record of a furnace; what is missing is said to be missing, where a rating can depend on it. */
export function FurnaceFacts({ furnace, file }: { furnace: Entry<FurnaceBody>; file: TeamFile }) {
  const { body } = furnace
  const range = body.rangeId === undefined ? undefined : file.ranges.get(file.keptId(body.rangeId))
  const older = body.replaces === undefined ? undefined : file.furnaces.get(file.keptId(body.replaces))
  const printed = (text: string | undefined) => (text === undefined ? missing : <AsPrinted text={text} />)
  const optional = (key: string, name: string, text: string | undefined) =>
    text === undefined ? [] : [{ key, name, value: text }]
  return (
    <Facts
      facts={[
        { key: 'model', name: 'Model', value: printed(body.model) },
        { key: 'revision', name: 'Revision', value: printed(body.revision) },
        { key: 'serial', name: 'Serial', value: printed(body.serial) },
        {
          key: 'elevation',
          name: 'Elevation',
          value: body.elevationMetres === undefined ? missing : heightWords(body.elevationMetres),
        },
        {
          key: 'range',
          name: 'Furnace range',
          value:
            range === undefined ? (
              missing
            ) : (
              <a href={`/equipment/range?id=${range.id}`}>{rangeWords(file, range)}</a>
            ),
        },
        { key: 'fuel', name: 'Fuel', value: body.fuel },
        ...optional('branch', 'Branch', body.branch),
        ...optional(
          'vent length',
          'Length of the vent',
          body.ventLengthMetres === undefined ? undefined : heightWords(body.ventLengthMetres),
        ),
        ...optional('vent', 'Vent', body.ventMaterial),
        ...(older === undefined
          ? []
          : [
              {
                key: 'replaces',
                name: 'Replaces',
                value: <a href={`/furnace?id=${older.id}`}>{furnaceWords(older)}</a>,
              },
            ]),
        ...optional('note', 'Note', body.note),
      ]}
    />
  )
}
