import canonicalize from 'canonicalize'
import { v7 as uuidv7 } from 'uuid'
import { beforeEach, expect, test } from 'vitest'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { logGuards } from '@/lib/server/log/verify'
import { manager, record, technician, withFreshLog } from './freshLog'

const fresh = withFreshLog()
const first = record({ body: { text: 'one', saidBy: 'The neighbour' } })
const second = record({ body: { text: 'two' } })

beforeEach(async () => {
  await fresh.add([first, second])
})

const everything = () => ({
  entries: fresh.db.prepare('SELECT * FROM LogEntry').all(),
  contents: fresh.db.prepare('SELECT * FROM LogContent').all(),
})

test('logGuards names every trigger on the log’s tables', () => {
  const triggers = fresh.db
    .prepare("SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name LIKE 'Log%' ORDER BY name")
    .pluck()
    .all()
  expect(triggers).toEqual([...logGuards].sort())
})

test.each([
  "UPDATE LogEntry SET author = 'x' WHERE seq = 1",
  'UPDATE LogEntry SET seq = 9 WHERE seq = 2',
  'UPDATE OR REPLACE LogEntry SET id = (SELECT id FROM LogEntry WHERE seq = 2) WHERE seq = 1',
  'UPDATE LogEntry SET hash = hash',
  'DELETE FROM LogEntry WHERE seq = 2',
  'DELETE FROM LogEntry',
  'INSERT OR REPLACE INTO LogEntry SELECT * FROM LogEntry WHERE seq = 1',
  "REPLACE INTO LogEntry SELECT seq, 'other', kind, version, author, device, saidAt, receivedAt, clockShiftMs, contentHash, previousHash, hash FROM LogEntry WHERE seq = 2",
  'REPLACE INTO LogEntry SELECT 3, id, kind, version, author, device, saidAt, receivedAt, clockShiftMs, contentHash, (SELECT hash FROM LogEntry WHERE seq = 2), hash FROM LogEntry WHERE seq = 1',
  'INSERT OR IGNORE INTO LogEntry SELECT * FROM LogEntry WHERE seq = 1',
  "INSERT INTO LogEntry SELECT * FROM LogEntry WHERE seq = 1 ON CONFLICT DO UPDATE SET author = 'x'",
  "INSERT INTO LogEntry SELECT 4, 'new', kind, version, author, device, saidAt, receivedAt, clockShiftMs, contentHash, hash, hash FROM LogEntry WHERE seq = 2",
  "INSERT INTO LogEntry SELECT 0, 'new', kind, version, author, device, saidAt, receivedAt, clockShiftMs, contentHash, hash, hash FROM LogEntry WHERE seq = 2",
  "INSERT INTO LogEntry SELECT NULL, 'new', kind, version, author, device, saidAt, receivedAt, clockShiftMs, contentHash, hash, hash FROM LogEntry WHERE seq = 2",
  "INSERT INTO LogEntry SELECT 3, 'new', kind, version, author, device, saidAt, receivedAt, clockShiftMs, contentHash, previousHash, hash FROM LogEntry WHERE seq = 2",
])('the database refuses, entry: %s', (sql) => {
  const before = everything()
  expect(() => fresh.db.exec(sql)).toThrow(/the log is (append-only|a chain)/)
  expect(everything()).toEqual(before)
})

test.each([
  "UPDATE LogContent SET bytes = replace(bytes, 'one', 'two') WHERE seq = 1",
  'UPDATE LogContent SET salt = NULL WHERE seq = 1',
  "UPDATE LogContent SET bytes = '', salt = NULL WHERE seq = 1",
  'UPDATE LogContent SET salt = NULL, withheldBySeq = 2 WHERE seq = 1',
  'UPDATE LogContent SET salt = NULL, withheldBySeq = 1 WHERE seq = 1',
  'UPDATE LogContent SET salt = NULL, withheldBySeq = 99 WHERE seq = 1',
  'UPDATE LogContent SET seq = 3 WHERE seq = 2',
  'UPDATE LogContent SET bytes = bytes',
  'DELETE FROM LogContent WHERE seq = 1',
  'DELETE FROM LogContent',
  'INSERT OR REPLACE INTO LogContent SELECT * FROM LogContent WHERE seq = 1',
  "REPLACE INTO LogContent SELECT seq, replace(bytes, 'one', 'two'), salt, NULL FROM LogContent WHERE seq = 1",
  'INSERT OR IGNORE INTO LogContent SELECT * FROM LogContent WHERE seq = 1',
  'INSERT INTO LogContent SELECT 9, bytes, salt, NULL FROM LogContent WHERE seq = 1',
])('the database refuses, content: %s', (sql) => {
  const before = everything()
  // Without foreign keys, as a tool might connect that does not ask for them.
  fresh.db.pragma('foreign_keys = OFF')
  expect(() => fresh.db.exec(sql)).toThrow(/only a withholding|append-only|different things/)
  expect(everything()).toEqual(before)
})

/** Puts a record into the tables with plain SQL, past the program. */
function insertRaw(said: RecordEnvelope, content = said): void {
  const { id, kind, version, author, device, saidAt } = said
  fresh.db.transaction(() => {
    fresh.db
      .prepare(
        `INSERT INTO LogEntry SELECT seq + 1, ?, ?, ?, ?, ?, ?, receivedAt, 0, '', hash, ?
         FROM LogEntry ORDER BY seq DESC LIMIT 1`,
      )
      .run(id, kind, version, author, device, saidAt, `hash of ${id}`)
    fresh.db
      .prepare("INSERT INTO LogContent SELECT max(seq), ?, 'salt', NULL FROM LogEntry")
      .run(JSON.stringify(content))
  })()
}

test.each(['id', 'kind', 'version', 'author', 'device', 'saidAt'] as const)(
  'the database refuses content whose %s is not its entry’s',
  (column) => {
    const said = record()
    const other = { ...said, [column]: column === 'version' ? 3 : 'other' }
    expect(() => insertRaw(said, other)).toThrow('content and entry say different things')
    const { [column]: _, ...without } = said
    expect(() => insertRaw(said, without as RecordEnvelope)).toThrow('content and entry say different things')
    expect(() => insertRaw(said)).not.toThrow()
  },
)

test('the database refuses content without salt, and content that is withheld from the first', () => {
  fresh.db.exec('BEGIN')
  const { id, kind, version, author, device, saidAt } = record()
  fresh.db
    .prepare(
      `INSERT INTO LogEntry SELECT 3, ?, ?, ?, ?, ?, ?, receivedAt, 0, '', hash, 'h' FROM LogEntry WHERE seq = 2`,
    )
    .run(id, kind, version, author, device, saidAt)
  const content = fresh.db.prepare('INSERT INTO LogContent VALUES (3, ?, ?, ?)')
  const bytes = JSON.stringify({ id, kind, version, author, device, saidAt, body: {} })
  expect(() => content.run(bytes, null, null)).toThrow('content comes with its salt')
  expect(() => content.run(bytes, 'salt', 1)).toThrow('content comes with its salt')
  expect(() => content.run(bytes, 'salt', null)).not.toThrow()
  fresh.db.exec('ROLLBACK')
})

const withholdingOf = (target: string, fields: string[]) =>
  record({
    kind: 'withholding',
    version: 1,
    author: manager.id,
    body: { record: target, fields, reason: 'A name got in.' },
  })

test('a withholding lets go of the fields that it names, of the record that it names, and of nothing else', () => {
  insertRaw(withholdingOf(first.id, ['saidBy']))
  const take = (seq: number, body: unknown, salt: string | null = null, by: number | null = 3) =>
    fresh.db
      .prepare('UPDATE LogContent SET bytes = ?, salt = ?, withheldBySeq = ? WHERE seq = ?')
      .run(canonicalize({ ...(seq === 1 ? first : second), body }), salt, by, seq)
  const fitting = { text: 'one', saidBy: '[withheld]' }

  expect(() => take(2, { text: '[withheld]' })).toThrow('only a withholding that names this record')
  expect(() => take(1, fitting, 'salt')).toThrow('the salt goes')
  expect(() => take(1, fitting, null, null)).toThrow('only a withholding')
  for (const body of [
    { text: '[withheld]', saidBy: '[withheld]' },
    { text: 'two', saidBy: '[withheld]' },
    { text: 'one', saidBy: 'gone' },
    { text: 'one', saidBy: null },
    { text: 'one', saidBy: '[withheld]', more: 1 },
    { text: 'one' },
    { saidBy: '[withheld]', other: 'one' },
    {},
  ]) {
    expect(() => take(1, body), JSON.stringify(body)).toThrow('only the fields that the withholding names')
  }
  expect(() =>
    fresh.db
      .prepare('UPDATE LogContent SET bytes = ?, salt = NULL, withheldBySeq = 3 WHERE seq = 1')
      .run(canonicalize({ ...first, author: 'x', body: fitting })),
  ).toThrow('only the fields that the withholding names')
  expect(() => take(1, fitting)).not.toThrow()
})

test('a withholding takes nothing out of a withholding, nor out of a record after it', () => {
  insertRaw(withholdingOf(first.id, ['saidBy']))
  const early = uuidv7()
  const other = withholdingOf(early, ['text'])
  insertRaw(other)
  insertRaw(record({ id: early, body: { text: 'late' } }))
  insertRaw(withholdingOf(other.id, ['reason']))
  const blank = (seq: number, by: number) => () =>
    fresh.db.prepare('UPDATE LogContent SET salt = NULL, withheldBySeq = ? WHERE seq = ?').run(by, seq)
  expect(blank(5, 4)).toThrow('only a withholding')
  expect(blank(4, 6)).toThrow('only a withholding')
})

const part = (partClass: string) =>
  record({ kind: 'part', version: 1, body: { partNumber: 'QX-1', class: partClass } })
const withdrawn = (target: string, replacedBy?: string) =>
  record({ kind: 'withdrawal', version: 1, body: { record: target, reason: 'Wrong.', replacedBy } })
const repairWith = (fittedPart: unknown) => record({ kind: 'repair', version: 1, body: { fittedPart } })
const reportOff = (readOffPart: unknown) => record({ kind: 'report', version: 1, body: { readOffPart } })

test.each(['general-purpose', 'not known'])(
  'rule 2: the database itself refuses a repair with a part of the class "%s", and names the rule',
  (partClass) => {
    const fitted = part(partClass)
    insertRaw(fitted)
    expect(() => insertRaw(repairWith(fitted.id))).toThrow(/^no general-purpose switch: Only a part/)
    expect(() => insertRaw(repairWith(fitted.id))).toThrow('found fitted')
  },
)

test('rule 2: the database lets a repair pass with a factory part, or with none', () => {
  const fitted = part('factory')
  insertRaw(fitted)
  for (const named of [fitted.id, undefined, null]) expect(() => insertRaw(repairWith(named))).not.toThrow()
})

test('rule 2: the database refuses a repair with a part that is not in the log, or is no part', () => {
  for (const named of [uuidv7(), first.id, '', 7, {}, []]) {
    expect(() => insertRaw(repairWith(named)), JSON.stringify(named)).toThrow(/^no general-purpose switch/)
  }
})

test('rule 2: the database goes by the newest correction of a part', () => {
  const [wrong, right, third] = [part('factory'), part('general-purpose'), part('factory')]
  for (const said of [wrong, right, third]) insertRaw(said)
  const correction = withdrawn(wrong.id, right.id)
  insertRaw(correction)
  expect(() => insertRaw(repairWith(wrong.id))).toThrow(/^no general-purpose switch/)
  const again = withdrawn(right.id, third.id)
  insertRaw(again)
  expect(() => insertRaw(repairWith(wrong.id))).not.toThrow()
  insertRaw(withdrawn(again.id))
  expect(() => insertRaw(repairWith(wrong.id))).toThrow(/^no general-purpose switch/)
  insertRaw(withdrawn(correction.id))
  expect(() => insertRaw(repairWith(wrong.id))).not.toThrow()
})

test('rule 2: a factory part that was withdrawn for nothing can’t be fitted, and parts can’t correct in a circle', () => {
  const [one, two] = [part('factory'), part('factory')]
  for (const said of [one, two, withdrawn(one.id)]) insertRaw(said)
  expect(() => insertRaw(repairWith(one.id))).toThrow(/^no general-purpose switch/)
  insertRaw(withdrawn(two.id, one.id))
  insertRaw(withdrawn(one.id, two.id))
  expect(() => insertRaw(repairWith(two.id))).toThrow(/^no general-purpose switch/)
})

test('rule 2: the database refuses a report read off a general-purpose part, or off what is no part', () => {
  const [bad, good, unknown] = [part('general-purpose'), part('factory'), part('not known')]
  for (const said of [bad, good, unknown]) insertRaw(said)
  expect(() => insertRaw(reportOff(bad.id))).toThrow(/^no general-purpose switch: A number read off/)
  for (const named of [uuidv7(), first.id, 7]) {
    expect(() => insertRaw(reportOff(named))).toThrow(/^no general-purpose switch/)
  }
  for (const named of [good.id, unknown.id, undefined])
    expect(() => insertRaw(reportOff(named))).not.toThrow()
})

test('rule 2: a report read off a part goes by the part’s newest correction', () => {
  const [wrong, right] = [part('not known'), part('general-purpose')]
  for (const said of [wrong, right]) insertRaw(said)
  expect(() => insertRaw(reportOff(wrong.id))).not.toThrow()
  insertRaw(withdrawn(wrong.id, right.id))
  expect(() => insertRaw(reportOff(wrong.id))).toThrow(/^no general-purpose switch/)
  insertRaw(withdrawn(right.id))
  expect(() => insertRaw(reportOff(right.id))).toThrow(/^no general-purpose switch/)
  insertRaw(withdrawn(right.id, wrong.id))
  expect(() => insertRaw(reportOff(right.id))).toThrow(/^no general-purpose switch/)
})

test('rule 2: a rule that only the database keeps is a refusal to its sender, and touches no other record', async () => {
  const bad = record({
    kind: 'part',
    version: 1,
    body: { partNumber: 'QX-2', class: 'general-purpose', fieldAdjustable: true, positionIds: [] },
  })
  const last = record()
  const answers = await fresh.add([bad, repairWith(bad.id), record(), reportOff(bad.id), last], technician)
  expect(answers.map(({ outcome }) => outcome)).toEqual(['stored', 'refused', 'stored', 'refused', 'stored'])
  expect(answers[1]).toMatchObject({
    rule: 'no general-purpose switch',
    sentence: expect.stringMatching(/^Only a part that the maker names/),
  })
  expect(answers[4]).toEqual({ id: last.id, outcome: 'stored', seq: 5 })
  expect(await fresh.log.verify()).toMatchObject({ entries: 5 })
})
