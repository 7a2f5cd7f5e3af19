import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { type AddressInfo, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { closeLogs, databaseFile, theLog } from '@/lib/server/database'
import { isPasswordOf } from '@/lib/server/people/passwords'
import { store } from '@/lib/server/people/store'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { loadDemo } from '@/seed-demo/load'
import { readMarker, writeMarker } from '@/seed-demo/marker'
import { demoPeople } from '@/seed-demo/people'

const scratch = mkdtempSync(path.join(tmpdir(), 'demo-'))
afterAll(() => rmSync(scratch, { recursive: true }))

const whole = demoRecords(demoSeed)
/** The company without its cases: enough to see how it is loaded, and quick. */
const records = withoutCases(whole)
const quiet = () => {}
let folder = ''
let count = 0

beforeEach(() => {
  folder = path.join(scratch, `data-${count++}`)
})

afterEach(async () => {
  closeLogs()
  if (process.env.INCHWATER_DATA === folder) await store().close()
  delete process.env.INCHWATER_DATA
})

/** The ids of everything in the log, read page by page. */
function storedIds(): string[] {
  const ids: string[] = []
  for (let after = 0; ; ) {
    const { records: page, next } = theLog().readChanges({ after, role: 'manager', limit: 1000 })
    if (page.length === 0) return ids
    ids.push(...page.map(({ id }) => id))
    after = next
  }
}

function withoutCases(all: readonly RecordEnvelope[]): RecordEnvelope[] {
  const kept = new Set<string>()
  return all.filter(({ id, kind, body }) => {
    const isKept =
      !['case', 'reading'].includes(kind) &&
      recordKinds[kind]!.refersTo(body).every((other) => kept.has(other))
    if (isKept) kept.add(id)
    return isKept
  })
}

const entryCount = () => {
  const db = new Database(databaseFile(folder), { readonly: true })
  const { entries } = db.prepare<[], { entries: number }>('SELECT count(*) AS entries FROM "LogEntry"').get()!
  db.close()
  return entries
}

test('loadDemo(folder) puts every record into a real log, in order, and the chain holds', async () => {
  const said: string[] = []
  expect(await loadDemo(folder, (line) => said.push(line))).toBe('loaded')
  expect(storedIds()).toEqual(whole.map(({ id }) => id))
  expect(await theLog().verify()).toMatchObject({ entries: whole.length })
  expect(said.join(' ')).toContain(`${whole.length} records`)
}, 120_000)

test('its people are there with their roles, and their printed passwords open', async () => {
  await loadDemo(folder, quiet, records)
  const { database } = store()
  for (const { id, name, role, password } of Object.values(demoPeople)) {
    const row = database
      .prepare<[string], { name: string; role: string; password: string }>(
        'SELECT "name", "role", "password" FROM "Person" JOIN "Account" ON "personId" = "Person"."id" WHERE "Person"."id" = ?',
      )
      .get(id)!
    expect([row.name, row.role]).toEqual([name, role])
    expect(await isPasswordOf(row.password, password)).toBe(true)
  }
})

test('loading twice changes nothing, and leaves what was added since', async () => {
  await loadDemo(folder, quiet, records)
  const ott = demoPeople.ott
  const added = {
    ...records.find(({ kind, author }) => kind === 'preference' && author === ott.id)!,
    id: '019ab000-0000-7000-8000-000000000001',
  }
  const sender = { id: ott.id, role: ott.role }
  await theLog().appendRecords({ sentAt: new Date().toISOString(), records: [added] }, sender)
  const before = entryCount()
  expect(await loadDemo(folder, quiet, records)).toBe('found')
  expect(entryCount()).toBe(before)
  expect(before).toBe(records.length + 1)
})

test('a loading that was broken off is taken up again', async () => {
  await loadDemo(folder, quiet, records)
  writeMarker(folder, { ...readMarker(folder)!, loaded: false })
  expect(await loadDemo(folder, quiet, records)).toBe('loaded')
  expect(entryCount()).toBe(records.length)
  expect(readMarker(folder)).toMatchObject({ loaded: true })
})

test('another version’s demo is left alone when it is whole, and refused when it is half', async () => {
  await loadDemo(folder, quiet, records)
  expect(await loadDemo(folder, quiet, records.slice(0, 10))).toBe('older')
  writeMarker(folder, { company: 'another', loaded: false })
  await expect(loadDemo(folder, quiet)).rejects.toThrow('half-loaded demo of another version')
  expect(entryCount()).toBe(records.length)
})

test('a folder with any other database is refused, and nothing in it is touched', async () => {
  folder = mkdtempSync(path.join(scratch, 'team-'))
  writeFileSync(databaseFile(folder), 'a team’s own database')
  await expect(loadDemo(folder, quiet)).rejects.toThrow(
    'a database that is not the demo’s. Nothing was changed',
  )
  expect(readdirSync(folder)).toEqual(['inchwater.db'])
  expect(readFileSync(databaseFile(folder), 'utf8')).toBe('a team’s own database')
})

test('a record that the log refuses stops the loading with its sentence', async () => {
  const wrong = records.map((record, at) => (at === 3 ? { ...record, body: {} } : record))
  await expect(loadDemo(folder, quiet, wrong)).rejects.toThrow(
    /The log did not take .* The first is record 4: /,
  )
  expect(readMarker(folder)).toMatchObject({ loaded: false })
})

test('the demo command names a busy port, with its own command for another', async () => {
  await loadDemo(folder, quiet, records)
  closeLogs()
  await store().close()
  delete process.env.INCHWATER_DATA
  const other = createServer()
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve))
  const { port } = other.address() as AddressInfo
  const child = spawn(process.execPath, ['--import', 'tsx', 'seed-demo/demo.ts'], {
    env: { ...process.env, INCHWATER_DEMO_DATA: folder, PORT: String(port) },
  })
  let said = ''
  child.stdout.on('data', (text) => (said += text))
  child.stderr.on('data', (text) => (said += text))
  const code = await new Promise((resolve) => child.on('exit', resolve))
  other.close()
  expect(said.trim().split('\n').at(-1)).toBe(
    `Port ${port} is in use by another program. Stop that one, or choose another port: PORT=${port + 1} npm run demo`,
  )
  expect(code).toBe(1)
  expect(existsSync(databaseFile(folder))).toBe(true)
})
