import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { seededRandom } from '@/lib/core/seeded'
import { openLog } from '@/lib/server/log/openLog'
import { migrate } from '@/prisma/migrate'
import { buildWriter, startWriter, type Writer } from './childProgram'
import { noon } from './freshLog'
import { smallKinds } from './smallKinds'

const kills = 50
const batchSize = 60
/** Logs that are written and killed side by side, so that one starts while another works. */
const lanes = 3

let folder = ''
let program = ''
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'killed-'))
  program = buildWriter(folder)
})
afterAll(() => rmSync(folder, { recursive: true }))

/** How many records of each batch the log holds, by "name batch", once the whole chain was verified. */
async function batchesIn(file: string): Promise<Map<string, number>> {
  const db = new Database(file)
  const log = openLog({ db, kinds: smallKinds, now: () => noon })
  const { trouble, entries } = await log.verify()
  expect(trouble).toBeUndefined()
  const counts = new Map<string, number>()
  const texts = db
    .prepare<[], string>("SELECT json_extract(bytes, '$.body.text') FROM LogContent")
    .pluck()
    .all()
  for (const batch of texts.map((text) => text.split('.')[0]!))
    counts.set(batch, (counts.get(batch) ?? 0) + 1)
  db.close()
  expect(texts).toHaveLength(entries)
  return counts
}

/** Kills a writer at some moment of its first to fourth batch, by the writer's own pace and then by the clock. */
async function killInTheMiddle(writer: Writer, random: () => number): Promise<void> {
  await writer.ready
  writer.go()
  const batches = Math.floor(4 * random())
  while (writer.begun.size <= batches) await sleep(1)
  await sleep(20 * random())
  writer.child.kill('SIGKILL')
  expect(await writer.over).toBe('SIGKILL')
}

test(`kill -9 in the middle of a batch leaves the log whole, ${kills} times: acknowledged batches are there, none is half there`, async () => {
  let inTheMiddle = 0
  let acknowledgedInAll = 0

  const lane = async (number: number): Promise<void> => {
    const random = seededRandom(number)
    const file = path.join(folder, `lane-${number}.db`)
    migrate(file)
    const turns = Array.from({ length: kills }, (_, turn) => turn).filter((turn) => turn % lanes === number)
    const start = (turn: number) => startWriter(program, file, `writer-${turn}`, batchSize)
    const acknowledged = new Set<string>()
    const begun = new Set<string>()
    let next = start(turns[0]!)
    for (const [at, turn] of turns.entries()) {
      const writer = next
      // The next program loads meanwhile; it touches the log only when it is told to go.
      const following = turns[at + 1]
      if (following !== undefined) next = start(following)
      await killInTheMiddle(writer, random)
      acknowledgedInAll += writer.ended.size
      if (writer.begun.size > writer.ended.size) inTheMiddle++
      for (const batch of writer.begun) begun.add(`writer-${turn} ${batch}`)
      for (const batch of writer.ended) acknowledged.add(`writer-${turn} ${batch}`)

      const found = await batchesIn(file)
      for (const [batch, count] of found) expect([batch, count]).toEqual([batch, batchSize])
      expect([...acknowledged].filter((batch) => !found.has(batch))).toEqual([])
      expect([...found.keys()].filter((batch) => !begun.has(batch))).toEqual([])
    }
  }
  await Promise.all(Array.from({ length: lanes }, (_, number) => lane(number)))
  expect(inTheMiddle).toBeGreaterThanOrEqual(kills / 5)
  expect(acknowledgedInAll).toBeGreaterThanOrEqual(kills / 5)
}, 120_000)
