'use client'

import { useMemo } from 'react'
import { worthVerifying } from '@/lib/records/view/desk/worthVerifying'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { rangeWords } from '../equipment/candidates'
import { Empty } from '../ui/answers/Empty'
import { DataTable } from '../ui/paper/DataTable'
import { Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'

/** As many as a quiet hour holds. */
const listed = 8

/** Where a quiet hour is well spent: the ratings that many furnaces depend on and that are least sure. */
export function WorthVerifyingSection({ now }: { now: string }) {
  const { file } = useDeviceState()
  const day = now.slice(0, 10)
  const ranked = useMemo(() => worthVerifying(file, ratingSettings(file, day)), [file, day])
  return (
    <section aria-labelledby="worth-verifying">
      <Stack>
        <h2 id="worth-verifying">Worth verifying next</h2>
        <DataTable
          caption="The number that proves the draft, by how many depend on it and how unsure it is"
          rows={ranked.slice(0, listed)}
          rowKey={({ key }) => key}
          columns={[
            {
              key: 'switch',
              words: 'Switch',
              cell: ({ position }) => {
                const range = file.ranges.get(file.keptId(position.body.rangeId))
                return (
                  <a href={`/setpoint?position=${position.id}`}>
                    {position.body.name}, {range && rangeWords(file, range)}
                  </a>
                )
              },
            },
            { key: 'level', words: 'Stands as', cell: ({ level }) => level },
            {
              key: 'furnaces',
              words: 'Furnaces we worked on',
              numeric: true,
              cell: ({ furnaces }) => furnaces,
            },
            { key: 'asked', words: 'Open questions', numeric: true, cell: ({ asked }) => asked },
          ]}
          empty={
            <Empty
              what="Nothing is worth a call just now"
              why="Every rating that our furnaces or open questions depend on is Verified, or none is on record yet."
              todo="Furnaces count from their first case, repair or baseline."
            />
          }
        />
        <Quiet>
          Ordered by furnaces and questions × doubt. What people look up is kept on their own devices, so it
          is not counted.
        </Quiet>
      </Stack>
    </section>
  )
}
