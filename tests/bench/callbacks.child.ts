import { register } from 'node:module'
import Database from 'better-sqlite3'
import { SearchParamsContext } from 'next/dist/shared/lib/hooks-client-context.shared-runtime'
import { createElement } from 'react'
import { renderToString } from 'react-dom/server'
import { leftUndoneSteps } from '@/app/callbacks/leftUndone/leftUndoneSteps'
import { swapsSteps } from '@/app/callbacks/swaps/swapsSteps'
import { DeviceContext } from '@/app/device/deviceContext'
import { usualCallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import { figuresOf } from '@/lib/records/view/callbacks/callbackFigures'
import { type TeamFacts, teamFacts } from '@/lib/records/view/callbacks/caseFacts'
import type { CallbackQuestion } from '@/lib/records/view/callbacks/question'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { demoPeople } from '@/seed-demo/people'
import { fakeDevice } from '../app/setup/fakeDevice'
import { manyFacts } from '../records/view/callbacks/manyFacts'
import { median, timed } from './measure'

/** Node reads no style sheets; nothing here depends on the names of their classes. */
const withoutStyles = `export const load = (url, context, next) => url.endsWith('.css')
  ? { format: 'module', shortCircuit: true, source: 'export default {}' } : next(url, context)`
register(`data:text/javascript,${encodeURIComponent(withoutStyles)}`)
const { Figures } = await import('@/app/callbacks/Figures')

const cases = 100_000
const rounds = 9
/** How long the whole screen may take. */
const wantedMs = 1000
const now = new Date().toISOString()
const [from, to] = [`${Number(now.slice(0, 4)) - 10}${now.slice(4, 7)}`, now.slice(0, 7)]
const question: CallbackQuestion = {
  fromMonth: from,
  toMonth: to,
  days: 30,
  sameCircuit: true,
  timeScale: 'heating-season days',
}

/** What some work took each time, by the clock and of one processor, in milliseconds. */
class Taken {
  readonly clock: number[] = []
  readonly processor: number[] = []

  of<T>(work: () => T): T {
    const before = process.cpuUsage()
    const { result, milliseconds } = timed(work)
    const { user, system } = process.cpuUsage(before)
    this.clock.push(milliseconds)
    this.processor.push((user + system) / 1000)
    return result
  }

  get best(): number {
    return Math.min(...this.clock)
  }

  get words(): string {
    const ms = (value: number): string => `${value.toFixed(0)} ms`
    return (
      `${ms(this.best)} at best, ${ms(median(this.clock))} mostly, ${ms(this.clock[0]!)} the first time; ` +
      `${ms(Math.min(...this.processor))} of processor at best`
    )
  }
}

const print = (line: string): void => {
  process.send?.(line)
}

/**
 * The callbacks screen for 100,000 cases over ten years: its figures, and figures and drawing together, down to the
 * HTML, as React writes it on a server (what a browser then takes to lay it out is not in it); beside a plain scan of
 * the same rows by SQLite, and beside a scan that only counts jobs by month. All take turns.
 */
function screen(): void {
  const facts = manyFacts(demoSeed, cases, `${from}-01T00:00:00Z`, 10)
  const db = tableOf(facts)
  const scan = db.prepare('SELECT * FROM CaseFacts ORDER BY furnaceId, openedAt')
  const count = db.prepare(
    `SELECT strftime('%Y-%m', endedAt / 1000, 'unixepoch') AS month, count(*), sum(minutes) FROM CaseFacts
     WHERE how IN ('repaired and proven', 'repaired, not proven', 'no fault found') GROUP BY month`,
  )
  const { id, name, role } = demoPeople.ragna
  const device = fakeDevice({ records: demoRecords(demoSeed), me: { id, name, role } })
  const drawn = (): string =>
    renderToString(
      createElement(
        DeviceContext.Provider,
        { value: device },
        createElement(
          SearchParamsContext.Provider,
          { value: new URLSearchParams({ period: 'chosen', from, to }) },
          createElement(Figures, { facts }),
        ),
      ),
    )
  const [figures, whole, scanned, counted] = [new Taken(), new Taken(), new Taken(), new Taken()]
  let [jobs, letters] = [0, 0]
  for (let round = 0; round < rounds; round++) {
    letters = whole.of(drawn).length
    jobs = figures.of(() => figuresOf(facts, question, Date.parse(now))).settled.of
    scanned.of(() => scan.all())
    counted.of(() => count.all())
  }
  db.close()
  print(`${cases} cases, ${jobs} jobs of settled months, ${rounds} rounds`)
  print(`all figures of the screen: ${figures.words}`)
  print(`the whole screen, figures and drawing to ${letters} letters of HTML: ${whole.words}`)
  print(`reading the same rows by SQL: ${scanned.words}`)
  print(`counting jobs by month by SQL: ${counted.words}`)
  const times = (what: Taken): string => (what.best / scanned.best).toFixed(1)
  print(
    `beside reading the rows the figures take ${times(figures)} times as long, the whole ${times(whole)} times`,
  )
  const within = (clock: number): string => `${clock <= wantedMs ? 'yes' : 'no'} (${clock.toFixed(0)} ms)`
  print(
    `the whole within ${wantedMs} ms, facts gathered before: mostly ${within(median(whole.clock))}, ` +
      `the first time ${within(whole.clock[0]!)}`,
  )
}

/**
 * What is worked out of the records themselves, on a screen in slices: the facts of the callbacks screen, the first
 * time and again after one record more; then, with the facts there, the replaced switches and what is left undone. The
 * log of 100,000 cases takes more memory than a process has, so it is measured on fewer, of two sizes: what a case
 * takes must not grow with them.
 */
function fromRecords(copies: number): void {
  const records = copiesOf(demoRecords(demoSeed), copies)
  const repair = records.find(({ kind }) => kind === 'repair')!
  const [folding, first, again, swaps, undone] = [
    new Taken(),
    new Taken(),
    new Taken(),
    new Taken(),
    new Taken(),
  ]
  let onFile = 0
  for (let round = 0; round < 3; round++) {
    // Another body each time, as where the page is loaded anew: then nothing is known yet.
    const loaded = records.map((record) => ({ ...record, body: { ...record.body } }))
    const file = folding.of(() => foldTeamFile(loaded))
    first.of(() => teamFacts(file))
    swaps.of(() => finish(swapsSteps(file, usualCallbackWindow, now)))
    undone.of(() => finish(leftUndoneSteps(file, now)))
    const withOneMore = foldTeamFile([...loaded, { ...repair, id: `${repair.id} again` }])
    again.of(() => teamFacts(withOneMore))
    onFile = counting(file.cases).length
  }
  const perCase = ({ processor }: Taken): string =>
    `${((1000 * Math.min(...processor)) / onFile).toFixed(0)} µs a case`
  print(`out of ${records.length} records with ${onFile} cases, 3 rounds`)
  print(`  folding the team file, which comes before: ${folding.words}, ${perCase(folding)}`)
  print(`  gathering the facts: ${first.words}, ${perCase(first)}`)
  print(`  again after one new record: ${again.words}, ${perCase(again)}`)
  print(`  replaced switches: ${swaps.words}, ${perCase(swaps)}`)
  print(`  what is left undone: ${undone.words}, ${perCase(undone)}`)
}

function finish(steps: Generator): void {
  while (!steps.next().done);
}

/** Kinds of the demo that every copy of it shares. */
const shared = new Set(['maker', 'equipment range', 'position', 'part', 'gauge', 'supersession', 'report'])

/** The records and more of the like, each copy with ids of its own. */
function copiesOf(records: readonly HeldRecord[], copies: number): HeldRecord[] {
  const own = records.filter(({ kind }) => !shared.has(kind))
  const ids = new Set(own.map(({ id }) => id))
  const written = own.map((record) => JSON.stringify(record))
  const more = Array.from({ length: copies - 1 }, (_, copy) =>
    written.map(
      (record): HeldRecord =>
        JSON.parse(record, (_key, value) => (ids.has(value) ? `${value} ${copy + 2}` : value)),
    ),
  )
  return [...records, ...more.flat()]
}

/** The same facts as rows of a table in memory, by furnace and time. */
function tableOf(facts: TeamFacts): Database.Database {
  const db = new Database(':memory:')
  db.exec(
    `CREATE TABLE CaseFacts (id TEXT PRIMARY KEY, furnaceId TEXT, branch TEXT, rangeId TEXT, circuit TEXT,
     openedAt INTEGER, endedAt INTEGER, how TEXT, by TEXT, cause TEXT, remedy TEXT, readBefore INTEGER,
     readAfter INTEGER, minutes INTEGER);
     CREATE INDEX ByFurnace ON CaseFacts (furnaceId, openedAt)`,
  )
  const insert = db.prepare('INSERT INTO CaseFacts VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)')
  db.transaction(() => {
    for (const one of facts.flatMap(({ cases: ofFurnace }) => ofFurnace))
      insert.run(
        one.id,
        one.furnaceId,
        one.branch ?? null,
        one.rangeId ?? null,
        one.circuit,
        one.openedAt,
        one.ended?.at ?? null,
        one.ended?.how ?? null,
        one.ended?.by ?? null,
        one.cause ?? null,
        one.remedy,
        Number(one.readBefore),
        Number(one.readAfter),
        one.minutes ?? null,
      )
  })()
  return db
}

screen()
for (const copies of [4, 24]) fromRecords(copies)
