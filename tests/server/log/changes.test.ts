import { expect, test } from 'vitest'
import type { RecordEnvelope, Role } from '@/lib/records/envelope'
import { manager, record, technician, withFreshLog } from './freshLog'

const fresh = withFreshLog()
const memo = () => record({ kind: 'memo', version: 1, author: manager.id, body: { text: 'a' } })

/** Nine records: 1–3 seen by all, 4–6 by managers, 7–8 by all, 9 by managers. */
async function addNine(): Promise<RecordEnvelope[]> {
  const own = [record(), record(), record()]
  const memos = [memo(), memo(), memo()]
  const more = [record(), record()]
  const last = memo()
  await fresh.add(own)
  await fresh.add(memos, manager)
  await fresh.add(more)
  await fresh.add([last], manager)
  return [...own, ...memos, ...more, last]
}
const read = (after: number, limit: number, role: Role = 'technician') =>
  fresh.log.readChanges({ after, limit, role })

test('readChanges({ after: 0 }) of an empty log is nothing, and there is no more', () => {
  expect(read(0, 10)).toEqual({ records: [], next: 0, more: false })
})

test('readChanges(asked) gives records as they were said, with what the log adds, in order', async () => {
  const said = await addNine()
  const { records, next, more } = read(0, 100, 'manager')
  expect(records).toEqual(
    said.map((each, index) => ({
      ...each,
      seq: index + 1,
      receivedAt: '2026-01-12T12:00:00.000Z',
      clockShiftMs: 0,
    })),
  )
  expect({ next, more }).toEqual({ next: 9, more: false })
})

test('readChanges(asked) leaves out what the role may not see, and counts it as examined', async () => {
  await addNine()
  expect(read(0, 100)).toMatchObject({
    records: [{ seq: 1 }, { seq: 2 }, { seq: 3 }, { seq: 7 }, { seq: 8 }],
    next: 9,
    more: false,
  })
  expect(read(3, 1)).toMatchObject({ records: [{ seq: 7 }], next: 7, more: true })
  expect(read(8, 1)).toMatchObject({ records: [], next: 9, more: false })
})

test.each([1, 2, 3, 4, 5, 6, 9, 100])(
  'readChanges(asked), asked again after `next` with limit %i, gives each record once',
  async (limit) => {
    await addNine()
    for (const [role, expected] of [
      ['technician', [1, 2, 3, 7, 8]],
      ['manager', [1, 2, 3, 4, 5, 6, 7, 8, 9]],
    ] as const) {
      const seen: number[] = []
      let after = 0
      for (let page = read(after, limit, role); ; page = read(after, limit, role)) {
        expect(page.records.length).toBeLessThanOrEqual(limit)
        seen.push(...page.records.map(({ seq }) => seq))
        after = page.next
        if (!page.more) break
      }
      expect(seen).toEqual(expected)
      expect(after).toBe(9)
    }
  },
)

test('readChanges(asked) goes on where it stopped when more was appended since', async () => {
  await addNine()
  const { next } = read(0, 100)
  const said = record()
  await fresh.add([said])
  expect(read(next, 100)).toMatchObject({ records: [{ id: said.id, seq: 10 }], next: 10, more: false })
})

test('readChanges({ after }) beyond the end gives nothing and does not go back', async () => {
  await addNine()
  expect(read(50, 10)).toEqual({ records: [], next: 50, more: false })
})

test('readChanges(asked) shows withheld fields as withheld, and the withholding itself', async () => {
  const said = record({ body: { text: 'a', saidBy: 'A name' } })
  await fresh.add([said])
  const taken = record({
    kind: 'withholding',
    version: 1,
    author: manager.id,
    body: { record: said.id, fields: ['saidBy'], reason: 'A name got in.' },
  })
  await fresh.add([taken], manager)
  expect(read(0, 10)).toMatchObject({
    records: [
      { body: { text: 'a', saidBy: '[withheld]' }, withheld: { by: taken.id, fields: ['saidBy'] } },
      { id: taken.id },
    ],
  })
})

test('readChanges(asked) does not show a kind that the program no longer knows', async () => {
  await fresh.add([record()])
  expect(read(0, 10, technician.role).records).toHaveLength(1)
  expect(read(0, 10, 'nobody' as Role)).toEqual({ records: [], next: 1, more: false })
})

test.each([
  [-1, 10, 'after'],
  [1.5, 10, 'after'],
  [Number.NaN, 10, 'after'],
  [0, 0, 'limit'],
  [0, 2.5, 'limit'],
  [0, Number.POSITIVE_INFINITY, 'limit'],
])('readChanges({ after: %d, limit: %d }) throws a RangeError that names %s', (after, limit, named) => {
  expect(() => read(after, limit)).toThrow(
    new RangeError(`readChanges requires ${named} ≥ ${named === 'after' ? 0 : 1}`),
  )
})
