'use client'

import type { SafetyEvent } from '@/lib/records/view/reports/safetyEvents'
import { useDeviceState } from '../../device/deviceContext'
import { Empty } from '../../ui/answers/Empty'
import { DataTable } from '../../ui/paper/DataTable'
import { sayDate } from '../../ui/words/sayDate'
import { Report } from './Report'

const whats = [
  'left off and tagged',
  'left off, no tag on record',
  'CO in the room',
  'CO in the flue',
  'jumper or bypass',
] as const satisfies readonly SafetyEvent['what'][]

/** What was found that could have hurt people. */
export function SafetyReport({ events }: { events: readonly SafetyEvent[] }) {
  const { file } = useDeviceState()
  const siteOf = ({ furnaceId }: SafetyEvent) =>
    (furnaceId === undefined ? undefined : file.furnaces.get(furnaceId)?.body.siteLabel) ??
    'furnace not named'
  return (
    <Report
      title="Safety events"
      means="Shut-down notices and whether a tag is on record; CO measured above its limit in the room or, air-free, in the flue, or above what no limit goes above; and jumpers or bypasses found, once for a furnace and day. What was withdrawn is left out."
    >
      <DataTable
        caption="How many"
        rows={events.length === 0 ? [] : whats}
        rowKey={(what) => what}
        columns={[
          { key: 'what', words: 'What', cell: (what) => capital(what) },
          {
            key: 'count',
            words: 'Events',
            numeric: true,
            cell: (what) => events.filter((event) => event.what === what).length,
          },
        ]}
        empty={
          <Empty
            what="No safety event in this period"
            why="No notice, no CO above its limit and no jumper is on record in it."
            todo="What was found and not recorded is not here: a danger is recorded on the case, before anything else."
          />
        }
      />
      {events.length > 0 && (
        <DataTable
          caption="Each of them, the newest first"
          rows={events}
          rowKey={({ id, what }) => `${id} ${what}`}
          columns={[
            {
              key: 'site',
              words: 'Where',
              cell: (event) => <a href={`/record?id=${event.id}`}>{siteOf(event)}</a>,
            },
            { key: 'what', words: 'What', cell: ({ what }) => capital(what) },
            { key: 'when', words: 'Recorded', cell: ({ at }) => sayDate(at) },
          ]}
          empty={null}
        />
      )}
    </Report>
  )
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`
