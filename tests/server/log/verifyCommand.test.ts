import { execFileSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { verifyCommand } from '@/lib/server/log/verifyCommand'
import { manager, record, tamper, withFreshLog } from './freshLog'

const fresh = withFreshLog()
async function run(...args: string[]): Promise<[number, string[]]> {
  const said: string[] = []
  const code = await verifyCommand(args, fresh.file, (sentence) => said.push(sentence))
  return [code, said]
}
const addThree = async () => {
  const named = record({ body: { text: 'a', saidBy: 'A name' } })
  await fresh.add([named, record()])
  const body = { record: named.id, fields: ['saidBy'], reason: 'A name got in.' }
  await fresh.add([record({ kind: 'withholding', version: 1, author: manager.id, body })], manager)
}

test('verify-log says that a log is whole, what is withheld in it, and the hash to keep', async () => {
  await addThree()
  const { headHash } = await fresh.log.verify()
  expect(await run()).toEqual([
    0,
    [
      'Entry 1: withheld by record 3.',
      'The log is whole: 3 entries, 1 with something withheld.',
      `Keep this elsewhere to compare with later: --expect 3:${headHash}`,
    ],
  ])
})

test('verify-log of a log without entries says that it is empty', async () => {
  expect(await run()).toEqual([0, ['The log is empty.']])
})

test('verify-log names the first entry that does not fit, why, and what to do, and fails', async () => {
  await addThree()
  tamper(fresh.db, "UPDATE LogContent SET bytes = replace(bytes, 'wet', 'dry') WHERE seq = 2")
  expect(await run()).toEqual([
    1,
    [
      'Entry 1: withheld by record 3.',
      'The content of entry 2 was changed: its hash is not the one in the chain. The first 1 entries before it fit.',
      'Stop the server, keep a copy of the data folder as it is, and restore the newest back-up that fits.',
    ],
  ])
})

test('verify-log --expect fits a log that went on since, and fails one that was written anew or cut short', async () => {
  await addThree()
  const { headHash } = await fresh.log.verify()
  await fresh.add([record()])
  const [code, said] = await run('--expect', `3:${headHash}`)
  expect(code).toBe(0)
  expect(said).toContain('Entry 3 has the hash that was noted: nothing up to it was written anew.')
  expect((await run(`--expect=3:${headHash}`))[0]).toBe(0)
  expect(await run('--expect', `2:${headHash}`)).toEqual([
    1,
    expect.arrayContaining(['Entry 2 had another hash when it was noted: the log was written anew since.']),
  ])
  expect(await run('--expect', `9:${headHash}`)).toEqual([
    1,
    expect.arrayContaining([
      expect.stringContaining('Entry 9 was there when its hash was noted, and is gone'),
    ]),
  ])
})

test.each([['--help'], ['--expect'], ['--expect', '3'], ['--expect', '0:ab'], ['3:ab']])(
  'verify-log %s %s says what can be said',
  async (...args) => {
    expect(await run(...args)).toEqual([64, [expect.stringContaining('--expect NUMBER:HASH')]])
  },
)

test('verify-log says plainly that there is no log, or that the file is none, and fails', async () => {
  const said: string[] = []
  const say = (sentence: string) => said.push(sentence)
  const missing = path.join(fresh.folder, 'nothing.db')
  expect(await verifyCommand([], missing, say)).toBe(1)
  const garbage = path.join(fresh.folder, 'garbage.db')
  writeFileSync(garbage, 'This is not a database. '.repeat(100))
  expect(await verifyCommand([], garbage, say)).toBe(1)
  const empty = path.join(fresh.folder, 'empty.db')
  new Database(empty).exec('CREATE TABLE a (x)').close()
  expect(await verifyCommand([], empty, say)).toBe(1)
  expect(said).toEqual([
    expect.stringMatching(/^There is no log at .*nothing\.db/),
    expect.stringMatching(/garbage\.db can't be read as a log/),
    expect.stringMatching(/empty\.db can't be read as a log/),
  ])
})

test('verify-log of a damaged file says so instead of going wrong', async () => {
  await fresh.add(Array.from({ length: 200 }, () => record({ body: { text: 'x'.repeat(500) } })))
  const damaged = path.join(fresh.folder, 'damaged.db')
  await fresh.db.backup(damaged)
  const db = new Database(damaged)
  const pageSize = db.pragma('page_size', { simple: true }) as number
  const pages = db.pragma('page_count', { simple: true }) as number
  db.close()
  const { openSync, writeSync, closeSync } = await import('node:fs')
  const handle = openSync(damaged, 'r+')
  for (let page = Math.floor(pages / 2); page < pages; page++) {
    writeSync(handle, Buffer.alloc(pageSize, 0xaa), 0, pageSize, page * pageSize)
  }
  closeSync(handle)
  const said: string[] = []
  expect(await verifyCommand([], damaged, (sentence) => said.push(sentence))).toBe(1)
  expect(said.join(' ')).toMatch(/Restore a back-up|restore the newest back-up/)
})

test('npm run verify-log reads the data folder that INCHWATER_DATA names', async () => {
  await addThree()
  const folder = path.join(fresh.folder, 'data')
  mkdirSync(folder)
  await fresh.db.backup(path.join(folder, 'inchwater.db'))
  const said = execFileSync(
    process.execPath,
    ['--import', 'tsx', path.resolve('lib/server/log/verifyCommand.ts')],
    { env: { ...process.env, INCHWATER_DATA: folder }, encoding: 'utf8' },
  )
  expect(said).toContain('The log is whole: 3 entries, 1 with something withheld.')
})
