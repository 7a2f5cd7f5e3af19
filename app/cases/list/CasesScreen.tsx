'use client'

import { useSearchParams } from 'next/navigation'
import { useDeferredValue, useEffect, useMemo, useState } from 'react'
import { useDeviceState } from '../../device/deviceContext'
import { Empty } from '../../ui/answers/Empty'
import { Button, ButtonLink } from '../../ui/form/Button'
import { TextField } from '../../ui/form/TextField'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Stack } from '../../ui/paper/Stack'
import { CaseLine } from './CaseLine'
import { activeFilters, type CaseFilters, filtersHref, readFilters } from './caseFilters'
import { caseRows } from './caseRows'
import { caseSearch, casesThatMatch } from './casesThatMatch'
import { countWords } from './countWords'
import { FilterFields } from './FilterFields'
import styles from './list.module.css'
import { NoneMatch } from './NoneMatch'

/** How many cases are shown at first, and how many more at a press. */
const atOnce = 50

/** The team's cases, the newest first, narrowed down by what is typed and chosen. The address holds all of it. */
export function CasesScreen() {
  const { file } = useDeviceState()
  const query = useSearchParams()
  const [filters, setFilters] = useState(() => readFilters(query))
  const [shown, setShown] = useState(atOnce)
  const [now] = useState(() => new Date().toISOString())
  const asked = useDeferredValue(filters)
  const rows = useMemo(() => caseRows(file), [file])
  const search = useMemo(() => caseSearch(file, rows, now), [file, rows, now])
  const matching = useMemo(() => casesThatMatch(rows, asked, search), [rows, asked, search])
  const folded = activeFilters(filters).filter((filter) => filter !== 'typed').length
  const [openAtFirst] = useState(folded > 0)
  const left = matching.length - shown

  // The address keeps every filter, so that reload, back and a shared link lead here again.
  useEffect(() => window.history.replaceState(window.history.state, '', filtersHref(filters)), [filters])

  function change(part: Partial<CaseFilters>) {
    setFilters((before) => ({ ...before, ...part }))
    setShown(atOnce)
  }

  return (
    <Stack>
      <PageHeader
        title="Cases"
        lead="The history of every complaint: what was found, what was done, and whether it held."
        actions={
          <ButtonLink kind="main" href="/cases/new">
            New case
          </ButtonLink>
        }
      />
      {rows.length === 0 ? (
        <Empty
          what="No case yet"
          why="A case is the history of one complaint on one furnace. The team learns from the cases it records."
          todo={<a href="/cases/new">Open the first case</a>}
        />
      ) : (
        <>
          <form
            aria-label="Search the cases"
            className={styles.search}
            action="/cases"
            method="get"
            onSubmit={(event) => event.preventDefault()}
          >
            <TextField
              exact
              label="Site, model, serial or complaint"
              name="q"
              type="search"
              value={filters.typed}
              onChange={(event) => change({ typed: event.target.value })}
            />
            <details open={openAtFirst}>
              <summary>Narrow it down{folded > 0 && ` (${folded} set)`}</summary>
              <FilterFields {...{ filters, change, file }} />
            </details>
          </form>
          <p role="status" className={styles.count}>
            {countWords({
              shown: Math.min(shown, matching.length),
              matching: matching.length,
              all: rows.length,
            })}
          </p>
          {matching.length === 0 && <NoneMatch filters={asked} {...{ rows, search, file, change }} />}
          <ul aria-label="Cases" className={styles.list}>
            {matching.slice(0, shown).map((row) => (
              <li key={row.entry.id}>
                <CaseLine {...{ row, file, now }} />
              </li>
            ))}
          </ul>
          {left > 0 && (
            <Button onClick={() => setShown((count) => count + atOnce)}>
              Show {Math.min(left, atOnce)} more ({left} not shown)
            </Button>
          )}
        </>
      )}
    </Stack>
  )
}
