'use client'

import { useMemo } from 'react'
import { organisationTrust, type SourceTrust, sourceTrust } from '@/lib/records/view/sourceTrust'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { DataTable } from '../ui/paper/DataTable'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import { Lessons } from './Lessons'
import { believed, callsWords, lessonsWords, trustNames } from './trustWords'

const countHeld = ({ lessons }: SourceTrust, held: boolean): number =>
  lessons.filter((lesson) => lesson.held === held).length

/** How far each kind of source is believed, and how settled disputes have moved that: every figure with its cases. */
export function SourcesScreen() {
  const { file } = useDeviceState()
  const sources = useMemo(() => sourceTrust(file), [file])
  const organisations = useMemo(() => organisationTrust(file), [file])
  const taught = sources.filter(({ lessons }) => lessons.length > 0)
  return (
    <Stack>
      <PageHeader
        above={<a href="/phone-desk">Phone desk</a>}
        title="How sources have held"
        lead="How far each kind of source is believed at first, and what settled disputes have made of it."
      />
      <DataTable
        caption="The chance that a single report names the right number"
        rows={sources}
        stacks
        rowKey={({ key }) => key}
        columns={[
          { key: 'source', words: 'Source', cell: ({ key }) => trustNames[key] },
          { key: 'start', words: 'At first', numeric: true, cell: ({ start }) => believed(start) },
          { key: 'for', words: 'Settled for it', numeric: true, cell: (each) => countHeld(each, true) },
          {
            key: 'against',
            words: 'Settled against it',
            numeric: true,
            cell: (each) => countHeld(each, false),
          },
          { key: 'now', words: 'Now', numeric: true, cell: ({ now }) => believed(now) },
        ]}
        empty={null}
      />
      <Quiet>
        The first value weighs like a hundred reports (common practice, no published source). Each settled
        dispute adds one: right for a source that had named the settled number, wrong for one that was
        overruled. The report that settled it is left out. In the weighing a source is held between 50 and
        99.5 %.
      </Quiet>
      {taught.length === 0 && (
        <Empty
          what="No dispute is settled yet"
          why="Every source stands at its first value until settled disputes speak for it or against it."
          todo={<a href="/phone-desk#in-dispute">See what is in dispute</a>}
        />
      )}
      {taught.map(({ key, start, now, lessons }) => (
        <Sheet key={key} title={trustNames[key]} sub={`${believed(start)} at first, ${believed(now)} now`}>
          <p>{lessonsWords(lessons)}</p>
          <Lessons lessons={lessons} />
        </Sheet>
      ))}
      <section aria-labelledby="whom-we-ring">
        <Stack>
          <h2 id="whom-we-ring">Whom we ring</h2>
          <Quiet>
            An answer is weighed as one of its kind of source. What an organisation’s own answers came to is
            listed for whoever decides whom to ring, and is not counted in the weighing.
          </Quiet>
          {organisations.length === 0 && (
            <Empty
              what="No settled dispute was about an answer by telephone"
              why="An organisation is listed here once a dispute that it gave a number in is settled."
              todo={<a href="/phone-desk#organisations">See whom the team rings</a>}
            />
          )}
          {organisations.map(({ name, lessons }) => (
            <Sheet key={name} heading={3} title={name}>
              <p>{callsWords(lessons)}</p>
              <Lessons lessons={lessons} />
            </Sheet>
          ))}
        </Stack>
      </section>
    </Stack>
  )
}
