import type { ReactNode } from 'react'
import { stageWords } from '@/lib/catalogue/switchKinds'
import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { DataTable } from '../../ui/paper/DataTable'
import { DateWords } from '../../ui/words/DateWords'
import { otherUnit } from '../../ui/words/pressureWords'
import { Quiet } from '../../ui/words/Quiet'
import { type BaselineLine, baselinePascals } from './baselinesOf'

type Props = {
  caption: string
  lines: readonly BaselineLine[]
  file: TeamFile
  unit: PressureUnit
  names: ReadonlyMap<string, string>
  empty: ReactNode
}

/** Baselines with everything that each of them holds for: no value stands without its stage, phase, day and person. */
export function BaselineTable({ caption, lines, file, unit, names, empty }: Props) {
  return (
    <DataTable
      caption={caption}
      rows={lines}
      rowKey={({ baseline }) => baseline.id}
      empty={empty}
      columns={[
        {
          key: 'value',
          words: 'Value',
          cell: (line) => (
            <>
              {formatPressure(baselinePascals(line), unit)}{' '}
              <Quiet inline>{formatPressure(baselinePascals(line), otherUnit(unit))}</Quiet>
            </>
          ),
        },
        {
          key: 'switch',
          words: 'Switch and stage',
          cell: ({ reading: { body } }) => (
            <>
              {body.positionId !== undefined &&
                `${file.positions.get(file.keptId(body.positionId))?.body.name ?? 'not on this device'}, `}
              {stageWords[body.stage]}
            </>
          ),
        },
        {
          key: 'phase',
          words: 'When in the run',
          cell: ({ reading: { body } }) => `${body.phase}, contact ${body.contacts}`,
        },
        {
          key: 'day',
          words: 'Day and occasion',
          cell: ({ baseline: { id, body } }) => (
            <a href={`/record?id=${id}`}>
              <DateWords at={body.on} />, {body.occasion}
            </a>
          ),
        },
        {
          key: 'who',
          words: 'By',
          cell: ({ baseline: { by } }) => names.get(by) ?? 'somebody whose name is not on this device',
        },
      ]}
    />
  )
}
