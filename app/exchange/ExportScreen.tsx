'use client'

import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { TakeInALog } from './TakeInALog'

/** Everything that is on file, to be taken away: as tables, or as the whole log with its hashes. */
export function ExportScreen() {
  const { me } = useDeviceState()
  if (me.role !== 'manager') {
    return (
      <Empty
        page
        what="A manager exports"
        why={`An export holds everything that the team has recorded, and a ${me.role} may not take it away.`}
        todo={<a href="/people">See who is a manager</a>}
      />
    )
  }
  return (
    <Stack>
      <PageHeader
        above={<a href="/people">People</a>}
        title="Export"
        lead="Everything that is on file, for other programs and for another server. It holds the names of sites and people: keep it as you keep the log."
      />
      <Sheet
        title="As tables"
        sub="One CSV for each kind of record, in a zip."
        foot={
          <ButtonLink kind="main" href="/api/export/tables" download>
            Take the tables
          </ButtonLink>
        }
      >
        <p>
          Every rating with its level, its sources and their dates, and the units by their UCUM codes. A text
          that a spreadsheet would run as a formula has an apostrophe in front.
        </p>
      </Sheet>
      <Sheet
        title="As one document"
        sub="The whole log as JSON, entry by entry, with its hashes."
        foot={
          <Row>
            <ButtonLink kind="main" href="/api/export/log" download>
              Take the log
            </ButtonLink>
            <ButtonLink href="/api/export/schema" download>
              Its schema
            </ButtonLink>
          </Row>
        }
      >
        <p>
          An empty server takes it in and has the same log with the same hashes. What was withheld stays
          withheld. Passwords and pictures are not in it: a back-up has them.
        </p>
      </Sheet>
      <TakeInALog />
    </Stack>
  )
}
