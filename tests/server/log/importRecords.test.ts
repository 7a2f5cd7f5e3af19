import { Readable } from 'node:stream'
import { expect, test } from 'vitest'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { importRecords } from '@/lib/server/log/importRecords'
import { dispatcher, manager, noon, record, technician, withFreshLog } from './freshLog'

const fresh = withFreshLog()
const people = [manager, dispatcher, technician]
const senderOf = (id: string) => people.find((person) => person.id === id)
const take = (lines: Iterable<string> | AsyncIterable<string>) =>
  importRecords(fresh.log, lines, { senderOf, now: () => noon })
const linesOf = (records: RecordEnvelope[]) => records.map((said) => JSON.stringify(said))

test('importRecords(lines) stores the records of several people in their order, each as its own author', async () => {
  const first = record()
  const answer = record({ author: dispatcher.id, body: { text: 'a', about: [first.id] } })
  const memo = record({ kind: 'memo', version: 1, author: manager.id })
  const last = record({ body: { text: 'b', about: [answer.id] } })
  const records = [first, answer, memo, last]
  expect(await take(linesOf(records))).toEqual({ stored: 4, alreadyStored: 0, leftOut: [] })
  const { records: kept } = fresh.log.readChanges({ after: 0, role: 'manager', limit: 10 })
  expect(kept.map(({ id }) => id)).toEqual(records.map(({ id }) => id))
})

test('importRecords(lines) the second time changes nothing', async () => {
  const lines = linesOf([record(), record({ author: dispatcher.id }), record()])
  await take(lines)
  expect(await take(lines)).toEqual({ stored: 0, alreadyStored: 3, leftOut: [] })
})

test('importRecords(lines) tells which lines it left out, and why, and stores the others', async () => {
  const lines = [
    JSON.stringify(record()),
    '',
    '{ not json',
    '7',
    JSON.stringify(record({ author: 'nobody' })),
    JSON.stringify(record({ kind: 'memo', version: 1 })),
    JSON.stringify(record({ body: { text: 'a', about: ['019b0a5e-7c00-7000-8000-000000000001'] } })),
    JSON.stringify(record()),
  ]
  expect(await take(lines)).toEqual({
    stored: 2,
    alreadyStored: 0,
    leftOut: [
      { line: 3, id: '', sentence: 'This line is not a JSON object with an author.' },
      { line: 4, id: '', sentence: 'This line is not a JSON object with an author.' },
      { line: 5, id: expect.any(String), sentence: 'Nobody here has the id “nobody”.' },
      { line: 6, id: expect.any(String), sentence: expect.stringMatching(/^A technician may not add/) },
      {
        line: 7,
        id: expect.any(String),
        sentence: 'It refers to records that are not in the log: 019b0a5e-7c00-7000-8000-000000000001.',
      },
    ],
  })
})

test('importRecords(lines) leaves a line out whose id is no text, whoever its author is', async () => {
  const lines = ['nobody', technician.id].map((author) => JSON.stringify({ author, id: { toString: 1 } }))
  const { stored, leftOut } = await take(lines)
  expect(stored).toBe(0)
  expect(leftOut.map(({ line, id }) => [line, id])).toEqual([
    [1, ''],
    [2, ''],
  ])
})

test('importRecords(lines) goes through the same door: rule 2 holds for a file too', async () => {
  const part = record({
    kind: 'part',
    version: 1,
    body: { partNumber: 'QX-2', class: 'general-purpose', fieldAdjustable: true, positionIds: [] },
  })
  const repair = record({ kind: 'repair', version: 1, body: { fittedPart: part.id } })
  expect(await take(linesOf([part, repair]))).toMatchObject({
    stored: 1,
    leftOut: [{ line: 2, id: repair.id, sentence: expect.stringContaining('found fitted') }],
  })
})

test('importRecords(lines) reads more lines than go in one batch, from a stream', async () => {
  const lines = linesOf(Array.from({ length: 1_234 }, () => record()))
  expect(await take(Readable.from(lines))).toEqual({ stored: 1_234, alreadyStored: 0, leftOut: [] })
  expect(await fresh.log.verify()).toMatchObject({ entries: 1_234 })
})
