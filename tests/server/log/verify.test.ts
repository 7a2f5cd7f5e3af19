import Database from 'better-sqlite3'
import { beforeEach, expect, test } from 'vitest'
import { contentHashOf, entryHashOf, type Header } from '@/lib/server/log/hash'
import { logGuards } from '@/lib/server/log/verify'
import { manager, record, tamper, withFreshLog } from './freshLog'

const fresh = withFreshLog()
const verify = () => fresh.log.verify()

/** Six entries; the fourth record's name is withheld by the sixth. */
beforeEach(async () => {
  const named = record({ body: { text: 'four', saidBy: 'A name' } })
  await fresh.add([record(), record(), record(), named, record()])
  const taken = record({
    kind: 'withholding',
    version: 1,
    author: manager.id,
    body: { record: named.id, fields: ['saidBy'], reason: 'A name got in.' },
  })
  await fresh.add([taken], manager)
})

test('verify() of a log as it was written counts its entries and gives the newest hash', async () => {
  const head = fresh.db.prepare('SELECT hash FROM LogEntry ORDER BY seq DESC LIMIT 1').pluck().get()
  const found = await verify()
  expect(found).toMatchObject({ entries: 6, headHash: head, withheld: [{ seq: 4, bySeq: 6 }] })
  expect(found.trouble).toBeUndefined()
})

test('verify() of an empty log finds no trouble, and the hash that the first entry follows', async () => {
  tamper(fresh.db, 'DELETE FROM LogContent; DELETE FROM LogEntry')
  expect(await verify()).toEqual({ entries: 0, headHash: '0'.repeat(64), withheld: [] })
})

test('verify(progress) tells how far it is, up to the end', async () => {
  const told: number[][] = []
  await fresh.log.verify((done, of) => told.push([done, of]))
  expect(told.at(-1)).toEqual([6, 6])
})

test.each([
  ['the author of an entry', "UPDATE LogEntry SET author = 'x' WHERE seq = 3", 3, 'Entry 3 was changed'],
  ['the time of an entry', "UPDATE LogEntry SET receivedAt = '2020' WHERE seq = 1", 1, 'Entry 1 was changed'],
  ['the clock shift', 'UPDATE LogEntry SET clockShiftMs = 1 WHERE seq = 2', 2, 'Entry 2 was changed'],
  ['the kind', "UPDATE LogEntry SET kind = 'memo' WHERE seq = 2", 2, 'Entry 2 was changed'],
  ['a content hash', "UPDATE LogEntry SET contentHash = 'x' WHERE seq = 2", 2, 'Entry 2 was changed'],
  ['a hash', "UPDATE LogEntry SET hash = 'x' WHERE seq = 2", 2, 'Entry 2 was changed'],
  ['a link', "UPDATE LogEntry SET previousHash = 'x' WHERE seq = 2", 2, 'Entry 2 does not follow entry 1'],
  [
    'one letter of a content',
    "UPDATE LogContent SET bytes = replace(bytes, 'wet', 'wat') WHERE seq = 3",
    3,
    'content of entry 3 was changed',
  ],
  ['a salt', "UPDATE LogContent SET salt = 'x' WHERE seq = 5", 5, 'content of entry 5 was changed'],
  [
    'a salt taken away',
    'UPDATE LogContent SET salt = NULL WHERE seq = 5',
    5,
    'content of entry 5 was changed',
  ],
  [
    'bytes that are no JSON',
    "DROP INDEX LogContent_names_record; DROP INDEX LogContent_ends_visit; DROP INDEX LogContent_shows_picture; UPDATE LogContent SET bytes = '{' WHERE seq = 2",
    2,
    'content of entry 2 was changed',
  ],
  ['content taken away', 'DELETE FROM LogContent WHERE seq = 2', 2, 'content of entry 2 is gone'],
  [
    'an entry in the middle taken away',
    'DELETE FROM LogContent WHERE seq = 2; DELETE FROM LogEntry WHERE seq = 2',
    3,
    'Entry 2 is missing; the next one is 3',
  ],
  [
    'the first entry taken away',
    'DELETE FROM LogContent WHERE seq = 1; DELETE FROM LogEntry WHERE seq = 1',
    2,
    'Entry 1 is missing',
  ],
  [
    'two entries exchanged',
    'UPDATE LogEntry SET seq = 99 WHERE seq = 2; UPDATE LogEntry SET seq = 2 WHERE seq = 3; UPDATE LogEntry SET seq = 3 WHERE seq = 99',
    2,
    'Entry 2 does not follow entry 1',
  ],
  [
    'two contents exchanged',
    'UPDATE LogContent SET seq = 99 WHERE seq = 2; UPDATE LogContent SET seq = 2 WHERE seq = 3; UPDATE LogContent SET seq = 3 WHERE seq = 99',
    2,
    'content of entry 2 was changed',
  ],
  [
    'content without an entry',
    "INSERT INTO LogContent SELECT 0, bytes, 'salt', NULL FROM LogContent WHERE seq = 1",
    6,
    'some content has no entry',
  ],
  [
    'a withheld field put back',
    "UPDATE LogContent SET bytes = replace(bytes, '[withheld]', 'A name') WHERE seq = 4",
    4,
    'The field “saidBy” of entry 4 was withheld by record 6, and is back',
  ],
  [
    'a withheld record given its salt back',
    "UPDATE LogContent SET salt = 'x' WHERE seq = 4",
    4,
    'its salt was kept',
  ],
  [
    'the author in what is left of a withheld record',
    "UPDATE LogContent SET bytes = replace(bytes, 'technician-1', 'technician-2') WHERE seq = 4",
    4,
    'Entry 4 and its content name different things as its author',
  ],
  [
    'a record that claims to be withheld',
    "UPDATE LogContent SET bytes = replace(bytes, 'wet', 'dry'), salt = NULL, withheldBySeq = 6 WHERE seq = 3",
    3,
    'Entry 3 says that it was withheld by record 6, which says nothing of the kind',
  ],
  [
    'a record withheld by an ordinary one',
    'UPDATE LogContent SET withheldBySeq = 5 WHERE seq = 4',
    4,
    'withheld by record 5, which says nothing of the kind',
  ],
])('verify() finds tampering at the right entry: %s', async (_what, sql, seq, sentence) => {
  tamper(fresh.db, sql)
  const { trouble, entries } = await verify()
  expect(trouble).toMatchObject({ seq, sentence: expect.stringContaining(sentence) })
  expect(entries).toBeLessThanOrEqual(seq)
})

test('verify() finds a withheld record that was put back whole, with its salt', async () => {
  const whole = record({ body: { text: 'a', saidBy: 'A name' } })
  await fresh.add([whole])
  const before = fresh.db.prepare('SELECT * FROM LogContent WHERE seq = 7').get() as Record<string, string>
  const taken = record({
    kind: 'withholding',
    version: 1,
    author: manager.id,
    body: { record: whole.id, fields: ['saidBy'], reason: 'A name got in.' },
  })
  await fresh.add([taken], manager)
  tamper(
    fresh.db,
    `UPDATE LogContent SET bytes = '${before.bytes}', salt = '${before.salt}', withheldBySeq = NULL WHERE seq = 7`,
  )
  expect((await verify()).trouble).toEqual({
    seq: 8,
    sentence: 'Entry 8 withholds something of entry 7, which still has it.',
  })
})

test('verify() finds an entry whose hashes were made to fit but whose content names another author', async () => {
  const last = fresh.db.prepare('SELECT * FROM LogEntry WHERE seq = 6').get() as Header &
    Record<string, string>
  const { bytes, salt } = fresh.db.prepare('SELECT * FROM LogContent WHERE seq = 6').get() as Record<
    string,
    string
  >
  const contentHash = contentHashOf(salt!, bytes!)
  const hash = entryHashOf(last.previousHash!, contentHash, { ...last, author: 'x' })
  tamper(fresh.db, `UPDATE LogEntry SET author = 'x', hash = '${hash}' WHERE seq = 6`)
  expect((await verify()).trouble).toEqual({
    seq: 6,
    sentence: 'Entry 6 and its content name different things as its author.',
  })
})

test('verify() cannot see that the newest entries were cut off, but its hash then is another', async () => {
  const { headHash } = await verify()
  tamper(
    fresh.db,
    'UPDATE LogContent SET withheldBySeq = NULL; DELETE FROM LogContent WHERE seq > 3; DELETE FROM LogEntry WHERE seq > 3',
  )
  const found = await verify()
  expect(found).toMatchObject({ entries: 3 })
  expect(found.headHash).not.toBe(headHash)
})

test.each(logGuards)('verify() misses the guard %s', async (guard) => {
  fresh.db.exec(`DROP TRIGGER ${guard}`)
  expect((await verify()).trouble).toEqual({ seq: 0, sentence: expect.stringContaining(guard) })
})

test('verify() changes nothing, also while another connection appends', async () => {
  const other = new Database(fresh.file)
  const walking = verify()
  await fresh.add(Array.from({ length: 30 }, () => record()))
  expect(await walking).toMatchObject({ entries: 6 })
  expect(await verify()).toMatchObject({ entries: 36 })
  other.close()
})
