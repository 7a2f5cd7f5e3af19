import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as uuidv7 } from 'uuid'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import {
  type Answers,
  decode,
  fieldsOf,
  gatherAsked,
  guessColumns,
  guessEncoding,
  noAnswers,
  planImport,
  readTable,
  recordsOf,
  whatIsOnFile,
} from '@/lib/records/oldList'
import { recordKinds } from '@/lib/records/registry'
import { openLog } from '@/lib/server/log/openLog'
import { migrate } from '@/prisma/migrate'
import { median } from './measure'

export const name = 'import'

const sizes = [12_500, 25_000, 50_000]
const batchSize = 200

/** An old list as teams keep them: two numbers a row, ten rows a position, two positions a range, makers misspelt. */
function listOf(rows: number): string {
  const lines = ['Maker;Range;Model;Position;Close (in. w.c.);Open (in. w.c.);Source;Date;Note']
  for (let at = 0; at < rows; at++) {
    const range = Math.floor(at / 20)
    const make = (0.3 + (at % 97) / 100).toFixed(2).replace('.', ',')
    const opens = (0.2 + (at % 89) / 100).toFixed(2).replace('.', ',')
    const position = at % 2 === 0 ? 'Low fire' : 'High fire'
    lines.push(
      `Maker ${range % 40};R ${range};M${range}-80;${position};-${make} ±0,05;-${opens};counter;${1 + (at % 28)}.${1 + (at % 12)}.2019;row ${at}`,
    )
  }
  return lines.join('\r\n')
}

/**
 * Taking over an old list of growing length into an empty file: reading it, judging every row, and storing what it
 * becomes through the same door as every record, in batches as a device sends them. Flat means that a row of the
 * longest list costs no more than one of the shortest.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const perRow: { rows: number; read: number; judge: number; fold: number; store: number }[] = []
  for (const rows of sizes) {
    const bytes = new TextEncoder().encode(listOf(rows))
    const started = performance.now()
    const read = readTable(decode(bytes, guessEncoding(bytes)))
    if (!read.ok) throw new Error(read.problem.message)
    const table = read.value
    const columns = guessColumns(table)
    const reading = {
      columns,
      decimals: 'comma' as const,
      dates: 'day first' as const,
      unit: '' as const,
      position: '',
    }
    const readMs = performance.now() - started

    const file = foldTeamFile([])
    const onFile = whatIsOnFile(file)
    const asked = (answers: Answers) =>
      gatherAsked(
        table.rows.map((row) => fieldsOf(row, columns)),
        '',
        onFile,
        answers,
      )
    const judgeStarted = performance.now()
    let answers: Answers = noAnswers
    answers = { ...answers, makers: Object.fromEntries(asked(answers).maker.map(({ key }) => [key, 'add'])) }
    answers = { ...answers, ranges: Object.fromEntries(asked(answers).range.map(({ key }) => [key, 'add'])) }
    const positions = asked(answers).position.map(({ key }) => [key, { kind: 'one-port' as const }])
    answers = { ...answers, positions: Object.fromEntries(positions) }
    const work = planImport({
      table,
      fileName: 'list.csv',
      reading,
      answers,
      takeOdd: true,
      file,
      me: 'person-1',
      now: new Date().toISOString(),
      newId: uuidv7,
    })
    let longestStepMs = 0
    let step = work.next()
    for (let before = performance.now(); !step.done; before = performance.now()) {
      step = work.next()
      longestStepMs = Math.max(longestStepMs, performance.now() - before)
    }
    const plan = step.value
    const judgeMs = performance.now() - judgeStarted
    const about = {
      fileName: 'list.csv',
      sha256: 'a'.repeat(64),
      encoding: 'utf-8',
      separator: 'semicolon' as const,
    }
    const records = recordsOf(plan, about, uuidv7)
    const taken = plan.verdicts.filter(({ outcome }) => outcome === 'taken over').length

    const { storeMs, batchMs, foldMs } = await store(records)
    perRow.push({
      rows,
      read: readMs / rows,
      judge: judgeMs / rows,
      fold: foldMs / rows,
      store: storeMs / rows,
    })
    print(
      `${rows} rows, ${taken} taken over, ${records.length} records: read ${readMs.toFixed(0)} ms, judge ${judgeMs.toFixed(0)} ms (longest step ${longestStepMs.toFixed(0)} ms), store ${storeMs.toFixed(0)} ms (first batches ${batchMs.first.toFixed(1)} ms, last ${batchMs.last.toFixed(1)} ms), fold ${foldMs.toFixed(0)} ms`,
    )
  }
  const [least, most] = [perRow[0]!, perRow.at(-1)!]
  for (const what of ['read', 'judge', 'store', 'fold'] as const) {
    const microseconds = (milliseconds: number) => (milliseconds * 1000).toFixed(0)
    print(
      `${what}: ${microseconds(least[what])} µs a row of ${least.rows}, ${microseconds(most[what])} µs a row of ${most.rows} (${(most[what] / least[what]).toFixed(2)} times)`,
    )
  }
}

async function store(records: readonly { id: string; kind: string; body: Record<string, unknown> }[]) {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-import-'))
  try {
    const file = path.join(folder, 'log.db')
    migrate(file)
    const db = new Database(file)
    const log = openLog({ db, kinds: recordKinds, now: () => new Date() })
    const saidAt = new Date().toISOString()
    const sender = { id: 'person-1', role: 'manager' as const }
    const batches: number[] = []
    const envelopes = records.map((record) => ({
      ...record,
      version: recordKinds[record.kind]!.version,
      saidAt,
      author: sender.id,
      device: 'desk-1',
    }))
    const started = performance.now()
    for (let at = 0; at < envelopes.length; at += batchSize) {
      const batchStarted = performance.now()
      const answers = await log.appendRecords(
        { sentAt: saidAt, records: envelopes.slice(at, at + batchSize) },
        sender,
      )
      const left = answers.find(({ outcome }) => outcome !== 'stored')
      if (left !== undefined) throw new Error(JSON.stringify(left))
      batches.push(performance.now() - batchStarted)
    }
    const storeMs = performance.now() - started
    db.close()
    const foldStarted = performance.now()
    foldTeamFile(envelopes.map((record, at) => ({ ...record, seq: at + 1 })))
    const foldMs = performance.now() - foldStarted
    const tenth = Math.max(1, Math.floor(batches.length / 10))
    return {
      storeMs,
      foldMs,
      batchMs: { first: median(batches.slice(0, tenth)), last: median(batches.slice(-tenth)) },
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
}
