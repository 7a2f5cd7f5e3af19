'use client'

import { useSearchParams } from 'next/navigation'
import { useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import { countOf } from '../callbacks/countOf'
import { useDeviceState } from '../device/deviceContext'
import { useAbout } from '../record/useAbout'
import { Empty } from '../ui/answers/Empty'
import { Button, ButtonLink } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Row, Stack } from '../ui/paper/Stack'
import { FilterFields } from './FilterFields'
import { LogEntry } from './LogEntry'
import styles from './log.module.css'
import { activeFilters, type LogFilters, logHref, noFilters, readLogAddress } from './logFilters'
import { logRows, rowsThatMatch } from './logRows'
import { VerifySheet } from './VerifySheet'

/** Entries on a page. Only these are worked out and drawn, so a long log costs no more than a short one. */
const onPage = 50

/**
 * Everything that was ever said, newest first, and whether it is still as it was written. The list is what this device
 * holds, so it is what this person may see; the chain is on the server alone, which checks it.
 */
export function LogScreen() {
  const { file, names, me } = useDeviceState()
  const about = useAbout()
  const query = useSearchParams()
  const [address, setAddress] = useState(() => readLogAddress(query))
  const asked = useDeferredValue(address)
  const rows = useMemo(() => logRows(file), [file])
  const matching = useMemo(() => rowsThatMatch(rows, asked, file), [rows, asked, file])
  const pages = Math.max(1, Math.ceil(matching.length / onPage))
  const page = Math.min(asked.page, pages)
  const shown = matching.slice((page - 1) * onPage, page * onPage)
  const set = activeFilters(address).length
  const [openAtFirst] = useState(set > 0)
  const top = useRef<HTMLParagraphElement>(null)

  // The address keeps every filter and the page, so that reload, back and a shared link lead here again.
  useEffect(() => window.history.replaceState(window.history.state, '', logHref(address)), [address])

  const change = (part: Partial<LogFilters>) => setAddress((before) => ({ ...before, ...part, page: 1 }))
  function turnTo(next: number) {
    setAddress((before) => ({ ...before, page: next }))
    top.current?.focus()
  }

  return (
    <Stack>
      <PageHeader
        title="Log"
        lead="Everything that anybody recorded, the newest first. Nothing in it is edited or deleted."
        actions={me.role === 'manager' && <ButtonLink href="/export">Export</ButtonLink>}
      />
      <VerifySheet />
      <details className={styles.narrow} open={openAtFirst}>
        <summary>Narrow it down{set > 0 && ` (${set} set)`}</summary>
        <FilterFields filters={address} {...{ change, file, names }} />
      </details>
      <p role="status" className={styles.count} ref={top} tabIndex={-1}>
        {countWords(matching.length, rows.length)}
        {pages > 1 && ` Page ${page} of ${pages}.`}
      </p>
      {matching.length === 0 && (
        <Empty
          what={rows.length === 0 ? 'Nothing is recorded yet' : 'No entry fits all of that'}
          why={
            rows.length === 0
              ? 'The log begins with the first furnace, part or report that somebody adds.'
              : 'Each filter by itself may have entries; together they have none.'
          }
          todo={
            rows.length === 0 ? (
              <a href="/equipment">Add the first equipment</a>
            ) : (
              <Button onClick={() => change(noFilters)}>
                Show all {countOf(rows.length, 'entry', 'entries')}
              </Button>
            )
          }
        />
      )}
      <ol aria-label="Entries" className={styles.list}>
        {shown.map((row) => (
          <li key={row.entry.id}>
            <LogEntry {...{ row, file, about }} role={me.role} />
          </li>
        ))}
      </ol>
      {pages > 1 && (
        <nav aria-label="Pages of the log">
          <Row>
            {page > 1 && <Button onClick={() => turnTo(page - 1)}>Newer entries</Button>}
            {page < pages && <Button onClick={() => turnTo(page + 1)}>Older entries</Button>}
          </Row>
        </nav>
      )}
    </Stack>
  )
}

const countWords = (matching: number, all: number): string =>
  matching === all
    ? `${countOf(all, 'entry', 'entries')}.`
    : `${matching.toLocaleString('en')} of ${countOf(all, 'entry', 'entries')} ${matching === 1 ? 'fits' : 'fit'}.`
