import { existsSync, readFileSync } from 'node:fs'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { redact } from '@/lib/records/redact'
import { manager, record, technician, withFreshLog } from './freshLog'

const fresh = withFreshLog()
const name = 'Wilhelmina Q. Storchenau'
const withholding = (target: string, ...fields: string[]) =>
  record({
    kind: 'withholding',
    version: 1,
    author: manager.id,
    body: { record: target, fields, reason: 'A name got in.' },
  })

test('a withholding takes the named fields out of the record, and leaves the rest of it', async () => {
  const said = record({ body: { text: 'The hose is wet.', saidBy: name } })
  const taken = withholding(said.id, 'saidBy')
  await fresh.add([record(), said])
  expect(await fresh.add([taken], manager)).toMatchObject([{ outcome: 'stored', seq: 3 }])
  expect(fresh.log.lookup(said.id)).toMatchObject({
    ...said,
    seq: 2,
    body: { text: 'The hose is wet.', saidBy: '[withheld]' },
    withheld: { by: taken.id, fields: ['saidBy'] },
  })
})

test('after a withholding the chain still fits, and verify says which record withheld it', async () => {
  const said = record({ body: { text: 'a', saidBy: name } })
  await fresh.add([record(), said, record()])
  const before = await fresh.log.verify()
  const taken = withholding(said.id, 'saidBy')
  await fresh.add([taken], manager)
  await fresh.add([record()])
  const after = await fresh.log.verify()
  expect(after).toMatchObject({ entries: 5, withheld: [{ seq: 2, id: said.id, bySeq: 4 }] })
  expect(after.trouble).toBeUndefined()
  const third = fresh.db.prepare('SELECT hash FROM LogEntry WHERE seq = 3').pluck().get()
  expect(third).toBe(before.headHash)
})

test('after a withholding what was withheld, and the salt, are in none of the database’s files', async () => {
  const small = record({ body: { text: 'a', saidBy: name } })
  const large = record({ body: { text: `${name} `.repeat(200) } })
  await fresh.add([small, large, record()])
  const files = () => [fresh.file, `${fresh.file}-wal`].filter(existsSync).map((file) => readFileSync(file))
  const hold = (text: string) => files().some((bytes) => bytes.includes(text))
  const salt = fresh.db.prepare<[], string>('SELECT salt FROM LogContent WHERE seq = 1').pluck().get() ?? ''
  expect(salt).toMatch(/^[0-9a-f]{32}$/)
  expect([hold(name), hold(salt)]).toEqual([true, true])
  await fresh.add([withholding(small.id, 'saidBy'), withholding(large.id, 'text')], manager)
  expect([hold(name), hold(salt)]).toEqual([false, false])
})

test('a reader in the way of wiping the files delays it to the next batch, and no longer', async () => {
  const said = record({ body: { text: 'a', saidBy: name } })
  await fresh.add([said])
  const reader = new Database(fresh.file)
  reader.exec('BEGIN')
  reader.prepare('SELECT count(*) FROM LogEntry').get()
  const taken = withholding(said.id, 'saidBy')
  expect(await fresh.add([taken], manager)).toMatchObject([{ outcome: 'stored' }])
  const walHolds = () => readFileSync(`${fresh.file}-wal`).includes(name)
  reader.exec('COMMIT')
  reader.close()
  await fresh.add([record()])
  expect(walHolds()).toBe(false)
})

test('a second withholding takes more out of a record, and both are told', async () => {
  const said = record({ body: { text: 'a', saidBy: name } })
  const [one, two] = [withholding(said.id, 'saidBy'), withholding(said.id, 'text', 'saidBy')]
  await fresh.add([said])
  await fresh.add([one], manager)
  await fresh.add([two], manager)
  expect(fresh.log.lookup(said.id)).toMatchObject({
    body: { text: '[withheld]', saidBy: '[withheld]' },
    withheld: { by: two.id, fields: ['saidBy', 'text'] },
  })
  expect((await fresh.log.verify()).trouble).toBeUndefined()
})

test('a withholding can take out a record of its own batch, and a field that the record has not', async () => {
  const said = record({ author: manager.id, body: { text: 'a' } })
  const answers = await fresh.add([said, withholding(said.id, 'saidBy')], manager)
  expect(answers).toMatchObject([{ outcome: 'stored' }, { outcome: 'stored' }])
  expect(fresh.log.lookup(said.id)).toMatchObject({ body: { text: 'a' }, withheld: { fields: ['saidBy'] } })
  expect((await fresh.log.verify()).trouble).toBeUndefined()
})

test('what was withheld is still known when its device sends it again, and anything else under its id is not', async () => {
  const said = record({ body: { text: 'a', saidBy: name } })
  await fresh.add([said])
  await fresh.add([withholding(said.id, 'saidBy')], manager)
  expect(await fresh.add([said])).toMatchObject([{ outcome: 'already stored', seq: 1 }])
  expect(await fresh.add([{ ...said, body: { text: 'b', saidBy: name } }])).toMatchObject([
    { outcome: 'refused', rule: 'one id, one record' },
  ])
})

test('the log refuses to withhold a field that its kind does not let go, whatever the withholding’s own rule', async () => {
  const said = record({ body: { text: 'a', saidBy: name, nested: {} } })
  await fresh.add([said])
  expect(await fresh.add([withholding(said.id, 'saidBy', 'nested')], manager)).toMatchObject([
    { outcome: 'refused', rule: 'only personal data can be withheld', sentence: /nested/ },
  ])
  expect(fresh.log.lookup(said.id)?.body).toEqual(said.body)
})

test('only who may add a withholding can withhold, and only of a record that is there', async () => {
  const said = record()
  await fresh.add([said])
  const own = { ...withholding(said.id, 'text'), author: technician.id }
  expect(await fresh.add([own])).toMatchObject([{ outcome: 'refused', rule: 'role' }])
  const early = withholding(record().id, 'text')
  expect(await fresh.add([early], manager)).toMatchObject([{ outcome: 'waiting for' }])
})

test('redact(record, fields) puts "[withheld]" for the fields named, adds none, and changes no input', () => {
  const said = Object.freeze({ ...record(), body: Object.freeze({ a: 1, b: { c: 2 }, d: null }) })
  expect(redact(said, ['b', 'd', 'e'])).toEqual({ ...said, body: { a: 1, b: '[withheld]', d: '[withheld]' } })
  expect(redact(said, [])).toEqual(said)
})
