import { expect, test } from 'vitest'
import type { Entry } from '@/lib/records/fold/entry'
import { groupedBy, groupedOnce } from '@/lib/records/view/grouped'

type Body = { about: readonly string[] }

const entry = (
  id: string,
  about: readonly string[],
  more: Partial<Entry<Body>> = {},
): [string, Entry<Body>] => [
  id,
  { id, body: { about }, by: 'person-1', at: `2026-01-0${id}T08:00:00.000Z`, waiting: false, ...more },
]
const file = { keptId: (id: string) => (id === 'b' ? 'a' : id) }
const idsIn = (groups: ReadonlyMap<string, readonly Entry<Body>[]>) =>
  Object.fromEntries([...groups].map(([key, of]) => [key, of.map(({ id }) => id)]))

test('groupedBy(items, keyOf) keeps the order of the items in each group, and leaves out what has no key', () => {
  const groups = groupedBy([5, 2, 9, 4, 0], (one) => (one === 0 ? undefined : one % 2 === 0 ? 'even' : 'odd'))
  expect([...groups]).toEqual([
    ['odd', [5, 9]],
    ['even', [2, 4]],
  ])
})

test('groupedOnce(idsOf) puts an entry once under each record that it is about, joined ones under the one that is kept', () => {
  const entries = new Map([entry('3', ['a', 'b']), entry('1', ['b', 'c']), entry('2', [])])
  expect(idsIn(groupedOnce<Body>(({ about }) => about)(file, entries))).toEqual({ a: ['3', '1'], c: ['1'] })
})

test('groupedOnce(idsOf) leaves out what was withdrawn and what is a duplicate', () => {
  const withdrawn = { id: 'w', by: 'person-1', at: '2026-01-09T08:00:00.000Z', reason: 'Not so.' }
  const entries = new Map([
    entry('1', ['a'], { withdrawn }),
    entry('2', ['a'], { sameAs: '3' }),
    entry('3', ['a']),
  ])
  expect(idsIn(groupedOnce<Body>(({ about }) => about)(file, entries))).toEqual({ a: ['3'] })
})

test('groupedOnce(idsOf, order) sorts each group, and leaves the entries in their own order', () => {
  const entries = new Map([entry('3', ['a']), entry('1', ['a']), entry('2', ['a'])])
  const byAge = groupedOnce<Body>(
    ({ about }) => about,
    (one, other) => (one.at < other.at ? -1 : 1),
  )
  expect(idsIn(byAge(file, entries))).toEqual({ a: ['1', '2', '3'] })
  expect([...entries.keys()]).toEqual(['3', '1', '2'])
})

test('groupedOnce(idsOf) reads the entries of one map once, and those of another anew', () => {
  let read = 0
  const grouped = groupedOnce<Body>(({ about }) => {
    read += 1
    return about
  })
  const entries = new Map([entry('1', ['a']), entry('2', ['c'])])
  expect(grouped(file, entries)).toBe(grouped(file, entries))
  expect(read).toBe(2)
  expect(grouped(file, new Map(entries))).not.toBe(grouped(file, entries))
  expect(read).toBe(4)
})
