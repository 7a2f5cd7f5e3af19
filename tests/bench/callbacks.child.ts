import Database from 'better-sqlite3'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import { figuresOf } from '@/lib/records/view/callbacks/callbackFigures'
import { type TeamFacts, teamFacts } from '@/lib/records/view/callbacks/caseFacts'
import type { CallbackQuestion } from '@/lib/records/view/callbacks/question'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { manyFacts } from '../records/view/callbacks/manyFacts'
import { median, timed } from './measure'

export const name = 'callbacks'

const cases = 100_000
const rounds = 7
const now = '2026-11-21T12:00:00Z'
const question: CallbackQuestion = {
  fromMonth: '2016-11',
  toMonth: '2026-11',
  days: 30,
  sameCircuit: true,
  timeScale: 'heating-season days',
}

/**
 * All figures of the callbacks screen for 100,000 cases over ten years, beside a plain scan of the same rows by
 * SQLite, and beside a scan that only counts jobs by month. Then what it costs to gather the facts of the demo's
 * cases out of their records, which a screen does once for a team file, in slices. All take turns.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const facts = manyFacts(demoSeed, cases, '2016-11-01T00:00:00Z', 10)
  const db = tableOf(facts)
  const scan = db.prepare('SELECT * FROM CaseFacts ORDER BY furnaceId, openedAt')
  const count = db.prepare(
    `SELECT strftime('%Y-%m', endedAt / 1000, 'unixepoch') AS month, count(*), sum(minutes) FROM CaseFacts
     WHERE how IN ('repaired and proven', 'repaired, not proven', 'no fault found') GROUP BY month`,
  )
  const took = { figures: [] as number[], scan: [] as number[], count: [] as number[] }
  const cpu: number[] = []
  let jobs = 0
  for (let round = 0; round < rounds; round++) {
    const before = process.cpuUsage()
    const { result, milliseconds } = timed(() => figuresOf(facts, question, Date.parse(now)))
    cpu.push(process.cpuUsage(before).user / 1000)
    took.figures.push(milliseconds)
    jobs = result.settled.of
    took.scan.push(timed(() => scan.all()).milliseconds)
    took.count.push(timed(() => count.all()).milliseconds)
  }
  db.close()

  const records = demoRecords(demoSeed)
  const gathering = { fold: [] as number[], gather: [] as number[] }
  let onFile = 0
  for (let round = 0; round < rounds; round++) {
    const { result: file, milliseconds } = timed(() => foldTeamFile(records))
    gathering.fold.push(milliseconds)
    gathering.gather.push(timed(() => teamFacts(file)).milliseconds)
    onFile = counting(file.cases).length
  }

  const shortest = (values: readonly number[]): string => `${Math.min(...values).toFixed(0)} ms`
  const both = (values: readonly number[]): string =>
    `${shortest(values)} at best, ${median(values).toFixed(0)} ms mostly`
  const ratio = Math.min(...took.figures) / Math.min(...took.scan)
  print(`${cases} cases, ${jobs} jobs of settled months, ${rounds} rounds`)
  print(`all figures of the screen: ${both(took.figures)}; at best ${shortest(cpu)} of one processor`)
  print(`reading the same rows by SQL: ${both(took.scan)}; the figures take ${ratio.toFixed(1)} times that`)
  print(`counting jobs by month by SQL: ${both(took.count)}`)
  print(
    `gathering the facts of the demo’s ${onFile} cases out of ${records.length} records: ${both(gathering.gather)}, ` +
      `folding the team file: ${both(gathering.fold)}`,
  )
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
