'use client'

import { useState } from 'react'
import type { Plan, PlannedReport, Step, Verdict } from '@/lib/records/oldList'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { Select } from '../ui/form/Select'
import { DataTable } from '../ui/paper/DataTable'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { columnsNotRead, type ReadFile } from './importForm'
import styles from './oldList.module.css'
import type { Import } from './useImport'
import { outcomes, outcomeWords, readAs, rowsWords, thingsWords, wouldStand } from './verdictWords'

/** Step 4: what becomes of every row, before anything is written; and the button that writes it. */
export function DryRun({ work, read }: { work: Import; read: ReadFile }) {
  const { plan, step, kept, choices, changeChoices } = work
  const { file } = useDeviceState()
  const [busy, setBusy] = useState(false)
  const before = [...file.imports.values()].find(
    ({ body, withdrawn }) => withdrawn === undefined && body.sha256 === work.file?.sha256,
  )
  const notRead = columnsNotRead(read)
  const taken = plan?.verdicts.filter(({ outcome }) => outcome === 'taken over').length ?? 0
  return (
    <Sheet
      title="4. Dry run"
      sub="Every row with what it would become. Nothing is written by it."
      foot={
        <Row>
          <Button
            kind={plan === undefined ? 'main' : 'plain'}
            disabled={step !== undefined}
            onClick={() => void work.judge()}
          >
            {plan === undefined ? `Try it: judge ${rowsWords(read.table.rows.length)}` : 'Judge again'}
          </Button>
          {plan !== undefined && taken > 0 && (
            <Button
              kind="main"
              disabled={busy}
              onClick={() => {
                setBusy(true)
                void work.confirm().finally(() => setBusy(false))
              }}
            >
              {busy ? 'Keeping the records …' : `Take over ${rowsWords(taken)}`}
            </Button>
          )}
        </Row>
      }
    >
      <Stack>
        {before !== undefined && (
          <p>
            This very file was imported before: <a href={`/record?id=${before.id}`}>{before.body.fileName}</a>
            . Its rows are there already.
          </p>
        )}
        {notRead.length > 0 && (
          <p>
            Not read, because nothing is chosen for {notRead.length === 1 ? 'it' : 'them'} under “Columns”:{' '}
            {notRead.map((name) => `“${name}”`).join(', ')}.
          </p>
        )}
        <Check
          name="takeOdd"
          label="Take unusual numbers over as they stand in the list"
          hint="Without this, a number that looks like a slip is held back, so that you can look at the list again."
          checked={choices.takeOdd}
          onChange={(event) => changeChoices({ takeOdd: event.target.checked })}
        />
        {step !== undefined && <HowFar doing="Judging row" {...step} />}
        {plan !== undefined && <Verdicts plan={plan} read={read} />}
        {/* Below the rows, beside the button that was pressed: a page of them is long. */}
        {kept !== undefined && <HowFar doing="Keeping record" {...kept} />}
      </Stack>
    </Sheet>
  )
}

const HowFar = ({ doing, done, of }: Step & { doing: string }) => (
  <p role="status">
    {doing} {Math.round(done)} of {of}
    <progress className={styles.progress} aria-label="How far it is" value={done} max={of} />
  </p>
)

const rowsAPage = 50

function Verdicts({ plan, read }: { plan: Plan; read: ReadFile }) {
  const [wanted, setWanted] = useState<Verdict['outcome'] | ''>('')
  const [page, setPage] = useState(0)
  const counts = new Map(outcomes.map((outcome) => [outcome, 0]))
  for (const { outcome } of plan.verdicts) counts.set(outcome, counts.get(outcome)! + 1)
  const rows = wanted === '' ? plan.verdicts : plan.verdicts.filter(({ outcome }) => outcome === wanted)
  const pages = Math.max(1, Math.ceil(rows.length / rowsAPage))
  const cellsOf = new Map(read.table.rows.map(({ row, cells }) => [row, cells]))
  return (
    <Stack>
      <dl className={styles.counts} aria-label="What becomes of the rows">
        {outcomes
          .filter((outcome) => counts.get(outcome)! > 0 || outcome === 'taken over')
          .map((outcome) => (
            <div key={outcome}>
              <dt>{outcomeWords[outcome]}</dt>
              <dd>{counts.get(outcome)}</dd>
            </div>
          ))}
      </dl>
      {plan.things.length > 0 && <p>Added with them: {thingsWords(plan.things)}.</p>}
      <Select
        label="Show"
        name="outcome"
        none="Every row"
        options={outcomes.map((value) => ({ value, words: `${outcomeWords[value]} (${counts.get(value)})` }))}
        value={wanted}
        onChange={(event) => {
          setWanted(event.target.value as typeof wanted)
          setPage(0)
        }}
      />
      <DataTable
        caption={`Rows of the file, page ${page + 1} of ${pages}`}
        columns={[
          { key: 'row', words: 'Row', cell: ({ row }) => row, numeric: true },
          {
            key: 'list',
            words: 'In the list',
            cell: ({ row }) => <AsPrinted text={(cellsOf.get(row) ?? []).filter(Boolean).join(' · ')} />,
          },
          { key: 'outcome', words: 'What becomes of it', cell: (verdict) => <Outcome verdict={verdict} /> },
        ]}
        rows={rows.slice(page * rowsAPage, (page + 1) * rowsAPage)}
        rowKey={({ row }) => String(row)}
        empty={
          <Empty what="No row" why="No row has this outcome." todo="Choose another one, or every row." />
        }
      />
      {pages > 1 && (
        <Row>
          <Button disabled={page === 0} onClick={() => setPage(page - 1)}>
            Rows before
          </Button>
          <Button disabled={page + 1 === pages} onClick={() => setPage(page + 1)}>
            Next rows
          </Button>
        </Row>
      )}
    </Stack>
  )
}

/** What may still be in a furnace: the truth of it is always taken. */
const foundFittedRules = ['no general-purpose switch', 'no bypass']

function Outcome({ verdict }: { verdict: Verdict }) {
  return (
    <>
      <b>{outcomeWords[verdict.outcome]}</b>
      {'sentence' in verdict && <p>{verdict.sentence}</p>}
      {'reports' in verdict && (
        <ul className={styles.looks}>
          {verdict.reports.map((report) => (
            <ReportLine key={report.id} report={report} />
          ))}
        </ul>
      )}
      {verdict.outcome === 'duplicate' && 'record' in verdict.of && (
        <p>
          <a href={`/record?id=${verdict.of.record}`}>See that report</a>
        </p>
      )}
      {verdict.outcome === 'refused' && foundFittedRules.includes(verdict.rule) && (
        <p>
          <a href="/found-fitted">Record it as found fitted</a>
        </p>
      )}
    </>
  )
}

function ReportLine({ report }: { report: PlannedReport }) {
  return (
    <li>
      {readAs(report)}
      <br />
      Would stand as {wouldStand(report)}
      {report.looks.map((look) => (
        <p key={look}>Look again: {look}</p>
      ))}
    </li>
  )
}
