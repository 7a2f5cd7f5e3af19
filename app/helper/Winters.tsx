'use client'

import { useState } from 'react'
import type { HelperRecord } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { DataTable } from '../ui/paper/DataTable'
import { Sheet } from '../ui/paper/Sheet'
import { Figure } from './Figure'
import { winterWords } from './figureWords'
import { OpenedCases } from './OpenedCases'
import { type Opened, opened } from './openedCases'

type Winter = HelperRecord['winters'][number]

/** Winter by winter, with the settings that the winters before had chosen. */
export function Winters({ record, file }: { record: HelperRecord; file: TeamFile }) {
  const [open, setOpen] = useState<Opened>()
  const figure = ({ winter }: Winter, places: 1 | 3) => {
    const where = places === 1 ? 'first' : 'among the first three'
    const within = record.forecasts.filter((forecast) => forecast.winter === winter)
    const title = `${winterWords(winter)}: the true cause ${where}`
    const of = opened(`${winter} ${places}`, title, within, ['helper', places])
    return <Figure of={of} isOpen={open?.key === of.key} onOpen={setOpen} />
  }
  return (
    <Sheet title="Winter by winter">
      <DataTable
        caption="What the helper did each winter"
        rowKey={({ winter }) => `${winter}`}
        rows={record.winters}
        columns={[
          { key: 'winter', words: 'Winter', cell: ({ winter }) => winterWords(winter) },
          { key: 'first', words: 'True cause first', cell: (winter) => figure(winter, 1) },
          { key: 'three', words: 'Among the first three', cell: (winter) => figure(winter, 3) },
          { key: 'how', words: 'How it weighed cases and trade', cell: settingsOf },
        ]}
        empty={null}
      />
      {open && <OpenedCases opened={open} file={file} />}
    </Sheet>
  )
}

const settingsOf = ({ neighbours, priorStrength, findingStrength }: Winter): string =>
  `${Number.isFinite(neighbours) ? `the ${neighbours} nearest cases` : 'all cases alike'}; ` +
  `the trade’s base rates worth ${priorStrength} cases, its word on a finding worth ${findingStrength}`
