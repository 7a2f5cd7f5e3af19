'use client'

import { useState } from 'react'
import type { HelperRecord, ReliabilityRow } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { perCent } from '../cases/work/chanceWords'
import { DataTable } from '../ui/paper/DataTable'
import { Sheet } from '../ui/paper/Sheet'
import { Figure } from './Figure'
import { shareOf } from './figureWords'
import { OpenedCases } from './OpenedCases'
import { type Opened, opened } from './openedCases'
import { ReliabilityPicture } from './ReliabilityPicture'

/** When the helper is sure, is it right? The picture, and the table that says the same. */
export function Reliability({ record, file }: { record: HelperRecord; file: TeamFile }) {
  const [open, setOpen] = useState<Opened>()
  const { reliability } = record.helper
  const behind = (row: ReliabilityRow): Opened => {
    const within = record.forecasts.filter(({ leading }) => tenthOf(leading.probability) === row.from)
    return opened(`${row.from}`, `First cause given ${rangeOf(row)}: it was the true one`, within, [
      'helper',
      1,
    ])
  }
  return (
    <Sheet
      title="How sure it was, and how often it was right"
      sub="A helper that says 70 % should be right in seven of ten such cases: then its points lie on the line."
    >
      <ReliabilityPicture rows={reliability} />
      <DataTable
        caption="The picture in figures"
        rowKey={({ from }) => `${from}`}
        rows={reliability}
        columns={[
          { key: 'given', words: 'Chance given to its first cause', cell: rangeOf },
          {
            key: 'came',
            words: 'It was the true one',
            cell: (row) => {
              const of = behind(row)
              return <Figure of={of} isOpen={open?.key === of.key} onOpen={setOpen} />
            },
          },
          { key: 'share', words: 'That is', cell: ({ came }) => shareOf(came) },
        ]}
        empty={null}
      />
      {open && <OpenedCases opened={open} file={file} />}
    </Sheet>
  )
}

const rangeOf = ({ from, to }: ReliabilityRow): string => `${perCent(from)} to ${perCent(to)}`

/** The tenth that a probability falls into, as reliabilityTable has it: the last one takes 100 % in. */
const tenthOf = (probability: number): number => Math.min(9, Math.floor(probability * 10)) / 10
