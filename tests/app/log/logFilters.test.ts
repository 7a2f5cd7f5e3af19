import fc from 'fast-check'
import { expect, test } from 'vitest'
import { logHref, readLogAddress } from '@/app/log/logFilters'
import { recordKinds } from '@/lib/records/registry'

const day = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10))
const address = fc.record({
  person: fc.oneof(fc.constant(''), fc.uuid()),
  kind: fc.constantFrom('', ...Object.keys(recordKinds)),
  furnace: fc.oneof(fc.constant(''), fc.uuid()),
  from: fc.oneof(fc.constant(''), day),
  to: fc.oneof(fc.constant(''), day),
  page: fc.integer({ min: 1, max: 999_999 }),
})

test('an address of the log and back is the same filters and page', () => {
  fc.assert(
    fc.property(address, (filters) => {
      const { searchParams } = new URL(logHref(filters), 'http://localhost')
      expect(readLogAddress(searchParams)).toEqual(filters)
    }),
  )
})

test('what an address cannot mean narrows nothing', () => {
  const query = new URLSearchParams('kind=nonsense&from=yesterday&to=2026-1-1&page=-3&other=1')
  expect(logHref(readLogAddress(query))).toBe('/log')
  expect(readLogAddress(new URLSearchParams('kind=constructor')).kind).toBe('')
})
