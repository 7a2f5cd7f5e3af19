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
import { sayAge } from '../ui/words/sayAge'
import { whyWorthVerifying } from './whyWorthVerifying'

/** As many as a quiet hour holds. */
const listed = 8

/** Where a quiet hour is well spent: the ratings that are used most and that are least sure. */
export function WorthVerifyingSection({ now }: { now: string }) {
  const { file, lookUps } = useDeviceState()
  const day = now.slice(0, 10)
  const ranked = useMemo(
    () => worthVerifying(file, ratingSettings(file, day), lookUps?.timesByPosition),
    [file, day, lookUps],
  )
  return (
    <section aria-labelledby="worth-verifying">
      <Stack>
        <h2 id="worth-verifying">Worth verifying next</h2>
        <DataTable
          caption="The number that proves the draft, by how much it is used and how unsure it is"
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
            { key: 'why', words: 'Why', cell: whyWorthVerifying },
          ]}
          empty={
            <Empty
              what="Nothing is worth a call just now"
              why="Every rating that is looked up, that our furnaces depend on or that somebody asks for is Verified, or none is on record yet."
              todo="Furnaces count from their first case, repair or baseline."
            />
          }
        />
        <Quiet>
          Ordered by look-ups, serviced furnaces and open questions × doubt. A switch that somebody opens
          counts once a day on each of their devices; who it was is not kept.{' '}
          {lookUps === undefined
            ? 'The team’s look-ups have not reached this device yet, so the order is without them.'
            : `Look-ups as the server had them ${sayAge(lookUps.at, now)}.`}
        </Quiet>
      </Stack>
    </section>
  )
}
