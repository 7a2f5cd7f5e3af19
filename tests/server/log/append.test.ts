import { v7 as uuidv7 } from 'uuid'
import { expect, test } from 'vitest'
import type { Answer } from '@/lib/records/answer'
import { answer } from '@/lib/records/answer'
import { openLog } from '@/lib/server/log/openLog'
import { dispatcher, manager, noon, record, technician, withFreshLog } from './freshLog'
import { smallKinds } from './smallKinds'

const fresh = withFreshLog()
const add = (...given: Parameters<typeof fresh.add>) => fresh.add(...given)
const one = async (...[records, ...rest]: Parameters<typeof fresh.add>): Promise<Answer> => {
  const answers = await add(records, ...rest)
  expect(answers).toHaveLength(records.length)
  return answer.parse(answers[0])
}
const minutesLater = (minutes: number) => new Date(noon.getTime() + 60_000 * minutes).toISOString()

test('appendRecords(batch) stores records under the numbers 1, 2, 3 …, in the order sent', async () => {
  const sent = [record(), record(), record()]
  expect(await add(sent)).toEqual([
    { id: sent[0]?.id, outcome: 'stored', seq: 1 },
    { id: sent[1]?.id, outcome: 'stored', seq: 2 },
    { id: sent[2]?.id, outcome: 'stored', seq: 3 },
  ])
  expect(await add([record()])).toMatchObject([{ seq: 4 }])
})

test('appendRecords(batch) keeps what was sent, and adds when it came and how far the sender’s clock is off', async () => {
  const said = record({ saidAt: '2026-01-12T13:30:00+01:00' })
  await add([said], technician, '2026-01-12T13:00:00Z')
  expect(fresh.log.lookup(said.id)).toEqual({
    ...said,
    seq: 1,
    receivedAt: '2026-01-12T12:00:00.000Z',
    clockShiftMs: -3_600_000,
  })
})

test('appendRecords(batch) takes in a phone whose clock stopped in 1970, and notes the difference', async () => {
  const said = record({ saidAt: '1970-01-01T00:10:00Z' })
  expect(await one([said], technician, '1970-01-01T00:20:00Z')).toMatchObject({ outcome: 'stored' })
  expect(fresh.log.lookup(said.id)?.clockShiftMs).toBe(noon.getTime() - 20 * 60_000)
})

test('appendRecords(batch) answers "already stored" to what is in the log, with its number', async () => {
  const said = record()
  await add([record(), said])
  expect(await one([said])).toEqual({ id: said.id, outcome: 'already stored', seq: 2 })
})

test('appendRecords(batch) knows a record again whatever order its fields come in', async () => {
  const said = record({ body: { text: 'a', saidBy: 'b' } })
  await add([said])
  const turned = Object.fromEntries(Object.entries({ ...said, body: { saidBy: 'b', text: 'a' } }).reverse())
  expect(await one([turned])).toMatchObject({ outcome: 'already stored', seq: 1 })
})

test('appendRecords(batch) stores a record that comes twice in one batch once', async () => {
  const said = record()
  expect(await add([said, said])).toMatchObject([{ outcome: 'stored' }, { outcome: 'already stored' }])
})

test('appendRecords(batch) refuses another record under an id that exists', async () => {
  const said = record()
  await add([said])
  const changed = { ...said, body: { text: 'The hose is dry.' } }
  expect(await one([changed])).toMatchObject({ outcome: 'refused', rule: 'one id, one record' })
  expect(fresh.log.lookup(said.id)?.body).toEqual(said.body)
})

test('appendRecords(batch) answers "already stored" although its person’s role would no longer allow it', async () => {
  const memo = record({ kind: 'memo', version: 1, author: manager.id })
  await add([memo], manager)
  const demoted = { id: manager.id, role: 'technician' as const }
  expect(await one([memo], demoted)).toMatchObject({ outcome: 'already stored', seq: 1 })
})

test('appendRecords(batch) refuses what somebody else said', async () => {
  expect(await one([record({ author: 'somebody-else' })])).toMatchObject({
    outcome: 'refused',
    rule: 'own records only',
  })
})

test('appendRecords(batch) takes what was said up to five minutes after it was sent, and refuses later', async () => {
  expect(await one([record({ saidAt: minutesLater(5) })])).toMatchObject({ outcome: 'stored' })
  const later = new Date(noon.getTime() + 5 * 60_000 + 1).toISOString()
  expect(await one([record({ saidAt: later })])).toMatchObject({ outcome: 'refused', rule: 'clock ahead' })
})

test.each(['unheard of', 'constructor', '__proto__', 'toString'])(
  'appendRecords(batch) refuses the unknown kind "%s", and asks for an update',
  async (kind) => {
    expect(await one([record({ kind })])).toMatchObject({
      outcome: 'refused',
      rule: 'known kind',
      sentence: expect.stringContaining('Update the server'),
    })
  },
)

test('appendRecords(batch) refuses an unknown version, and takes in every version that was ever released', async () => {
  expect(await one([record({ version: 3 })])).toMatchObject({ outcome: 'refused', rule: 'known version' })
  expect(await one([record({ version: 1 })])).toMatchObject({ outcome: 'stored' })
})

test('appendRecords(batch) judges a body by the schema of its version', async () => {
  const withAbout = { text: 'a', about: [] }
  expect(await one([record({ version: 1, body: withAbout })])).toMatchObject({
    outcome: 'refused',
    rule: 'body shape',
  })
  expect(await one([record({ version: 2, body: withAbout })])).toMatchObject({ outcome: 'stored' })
})

test('appendRecords(batch) says which field of a body does not fit, and why', async () => {
  const body = { nested: { sizes: [1, 'two'] }, textt: 'a' }
  expect(await one([record({ body })])).toEqual({
    id: expect.any(String),
    outcome: 'refused',
    rule: 'body shape',
    sentence:
      'In “text”: A remark must be text. In “nested, sizes, item 2”: Expected number, received string. ' +
      'This program knows no “textt” here.',
  })
})

test('appendRecords(batch) refuses a kind that the person’s role may not add, and says who may', async () => {
  const memo = (author: string) => record({ kind: 'memo', version: 1, author })
  for (const person of [technician, dispatcher]) {
    expect(await one([memo(person.id)], person)).toMatchObject({
      outcome: 'refused',
      rule: 'role',
      sentence: expect.stringContaining('Ask a manager'),
    })
  }
  expect(await one([memo(manager.id)], manager)).toMatchObject({ outcome: 'stored' })
})

test('appendRecords(batch) refuses by the kind’s own rule, which sees the log, the batch so far and the author', async () => {
  const closed = record({ body: { text: 'closed' } })
  const about = (author: string) => record({ author, body: { text: 'more', about: [closed.id] } })
  expect(await add([closed, about(technician.id)])).toMatchObject([
    { outcome: 'stored' },
    { outcome: 'refused', rule: 'closed', sentence: 'Nothing is said of a closed remark.' },
  ])
  expect(await one([about(manager.id)], manager)).toMatchObject({ outcome: 'stored' })
})

test('appendRecords(batch) answers "waiting for" the records that are not there yet, each named once', async () => {
  const first = record()
  const missing = [uuidv7(), uuidv7()]
  const body = { text: 'a', about: [missing[0], first.id, missing[1], missing[0]] }
  expect(await add([first, record({ body })])).toMatchObject([
    { outcome: 'stored' },
    { outcome: 'waiting for', ids: missing },
  ])
})

test('appendRecords(batch) finds what a record refers to earlier in the batch, not later', async () => {
  const first = record()
  const second = record({ body: { text: 'b', about: [first.id] } })
  expect(await add([second, first, second])).toMatchObject([
    { outcome: 'waiting for', ids: [first.id] },
    { outcome: 'stored', seq: 1 },
    { outcome: 'stored', seq: 2 },
  ])
})

test('appendRecords(batch) refuses a record that refers to itself', async () => {
  const id = uuidv7()
  expect(await one([record({ id, body: { text: 'a', about: [id] } })])).toMatchObject({
    outcome: 'refused',
    rule: 'no reference to itself',
  })
})

test('appendRecords(batch) lets one record’s refusal touch no other', async () => {
  const good = [record(), record(), record()]
  const bad = [
    'no record',
    null,
    {},
    record({ id: 'not-a-uuid' }),
    { ...record(), extra: 1 },
    record({ saidAt: 'yesterday' }),
    record({ author: 'x' }),
    record({ kind: 'x' }),
    record({ body: { text: 'half a character: \ud800' } }),
    record({ body: { text: 'too large', nested: { size: Number.POSITIVE_INFINITY } } }),
  ]
  const sent = [good[0], ...bad.slice(0, 5), good[1], ...bad.slice(5), good[2]]
  const answers = await add(sent)
  expect(answers.map(({ outcome }) => outcome)).toEqual([
    'stored',
    ...Array(5).fill('refused'),
    'stored',
    ...Array(5).fill('refused'),
    'stored',
  ])
  for (const each of answers) answer.parse(each)
  expect(await fresh.log.verify()).toMatchObject({ entries: 3 })
})

test('appendRecords(batch) says of what is no record at all what is wrong with it', async () => {
  expect(await one([{ ...record(), saidAt: undefined }])).toMatchObject({
    rule: 'record shape',
    sentence: 'In “said at”: It is missing.',
  })
  expect(await one([{ ...record(), id: 7 }])).toMatchObject({ id: '', rule: 'record shape' })
})

test('appendRecords(batch) keeps every letter: control characters, NUL, and what lies outside the first plane', async () => {
  const odd = 'NUL:\u0000 bell:\u0007 line:\n\u2028 quote:" slash:\\ 😀 ﬀ é'
  const said = record({ device: odd, body: { text: odd } })
  expect(await one([said])).toMatchObject({ outcome: 'stored' })
  expect(fresh.log.lookup(said.id)).toMatchObject({ device: odd, body: { text: odd } })
  expect((await fresh.log.verify()).trouble).toBeUndefined()
})

test('appendRecords({ records: [] }) answers nothing and stores nothing', async () => {
  expect(await add([])).toEqual([])
  expect(await fresh.log.verify()).toMatchObject({ entries: 0 })
})

test('appendRecords(batch) changes nothing of what it is given', async () => {
  const said = record()
  const frozen = Object.freeze([Object.freeze({ ...said, body: Object.freeze(said.body) })])
  expect(await one(frozen)).toMatchObject({ outcome: 'stored' })
})

test('appendRecords(batch) throws a RangeError when sentAt is no moment', async () => {
  await expect(add([record()], technician, 'soon')).rejects.toThrow(
    new RangeError('appendRecords requires sentAt to be a moment, ISO 8601'),
  )
})

test('appendRecords(batch) stores nothing of a batch when the disk is full, and goes on when it is not', async () => {
  await add([record()])
  const pages = fresh.db.pragma('page_count', { simple: true }) as number
  fresh.db.pragma(`max_page_count = ${pages + 1}`)
  const large = Array.from({ length: 20 }, () => record({ body: { text: 'x'.repeat(4_000) } }))
  await expect(add(large)).rejects.toMatchObject({ code: 'SQLITE_FULL' })
  expect(await fresh.log.verify()).toMatchObject({ entries: 1 })
  fresh.db.pragma('max_page_count = 1000000')
  expect(await add(large)).toHaveLength(20)
  expect((await fresh.log.verify()).trouble).toBeUndefined()
})

test('openLog({ now }) takes the time of receiving from its clock', async () => {
  const log = openLog({ db: fresh.db, kinds: smallKinds, now: () => new Date('2026-02-01T08:00:00Z') })
  const said = record()
  await log.appendRecords({ sentAt: noon.toISOString(), records: [said] }, technician)
  expect(log.lookup(said.id)?.receivedAt).toBe('2026-02-01T08:00:00.000Z')
})

test('lookup(id) is undefined for what is not in the log', () => {
  expect(fresh.log.lookup(uuidv7())).toBeUndefined()
})
