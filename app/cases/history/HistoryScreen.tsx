'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { type CaseView, caseViewOf } from '@/lib/records/view/case/caseView'
import { useDeviceState } from '../../device/deviceContext'
import { furnaceWords } from '../../equipment/candidates'
import { Empty } from '../../ui/answers/Empty'
import { Button, ButtonLink } from '../../ui/form/Button'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Row, Stack } from '../../ui/paper/Stack'
import { capitalised } from '../work/capitalised'
import { ForTheAudit } from './ForTheAudit'
import styles from './history.module.css'
import { LastTime } from './LastTime'
import { momentWords } from './momentWords'
import { Timeline } from './Timeline'
import { toldIn } from './told'

/** The history of one case, to read or to print: everything said, in its order, as it stood that day. */
export function HistoryScreen() {
  const id = useSearchParams().get('id') ?? ''
  const { file } = useDeviceState()
  const view = useMemo(() => caseViewOf(file, id), [file, id])
  if (view === undefined)
    return (
      <Empty
        page
        what="This case is not on this device"
        why="The address may be cut short, or the case was recorded elsewhere and has not reached this device."
        todo={<a href="/cases">All cases</a>}
      />
    )
  return <History view={view} />
}

function History({ view }: { view: CaseView }) {
  const { file, names } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const told = useMemo(() => toldIn(file, view.file), [file, view])
  const { entry, furnace } = view.file
  return (
    <div className={styles.page}>
      <Stack>
        <PageHeader
          above={<a href={`/case?id=${entry.id}`}>The case at {furnace.body.siteLabel}</a>}
          title="Case history"
          lead={
            <>
              {entry.body.complaint}. <a href={`/furnace?id=${furnace.id}`}>{furnaceWords(furnace)}</a>.{' '}
              {capitalised(view.standing)}
              {view.missing.length > 0 && `: the last ending lacks ${view.missing.length} of what it needs`}.
            </>
          }
          actions={
            <Row>
              <Button onClick={() => window.print()}>Print it</Button>
              <ButtonLink href={`/case?id=${entry.id}`}>Work on the case</ButtonLink>
            </Row>
          }
        />
        {entry.withdrawn !== undefined && (
          <p>
            This case was withdrawn {momentWords(entry.withdrawn.at)}: {entry.withdrawn.reason}. It stays
            readable.
          </p>
        )}
        <LastTime file={file} ofCase={view.file} now={now} />
        <div className={styles.columns}>
          <ForTheAudit told={told} file={file} ofCase={view.file} names={names} />
          <Timeline told={told} file={file} ofCase={view.file} />
        </div>
        <p className={styles.aside}>As this device had it {momentWords(now)}.</p>
      </Stack>
    </div>
  )
}
