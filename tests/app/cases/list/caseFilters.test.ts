import { describe, expect, test } from 'vitest'
import { activeFilters, filtersHref, noFilters, readFilters } from '@/app/cases/list/caseFilters'
import { countWords } from '@/app/cases/list/countWords'

const filters = {
  typed: 'mill row & 12',
  standing: 'repaired, not proven',
  cause: 'vent-end-blocked',
  known: 'presumed',
  range: '01920000-0000-7000-8000-000000000002',
  branch: 'North',
  from: '2026-01-01',
  to: '2026-01-31',
} as const

describe('readFilters(query) and filtersHref(filters)', () => {
  test('there and back is the same', () => {
    const href = filtersHref(filters)
    expect(readFilters(new URL(href, 'http://localhost').searchParams)).toEqual(filters)
  })
  test('without a filter the address is the list’s own', () => {
    expect(filtersHref(noFilters)).toBe('/cases')
    expect(readFilters(new URLSearchParams())).toEqual(noFilters)
  })
  test('what cannot be read narrows nothing', () => {
    const query = new URLSearchParams('standing=maybe&cause=gremlins&known=hoped&from=12.1.2026&to=x')
    expect(readFilters(query)).toEqual(noFilters)
  })
  test('a cause that is not on the list can be asked for', () => {
    expect(readFilters(new URLSearchParams('cause=not on the list')).cause).toBe('not on the list')
  })
})

describe('activeFilters(filters)', () => {
  test('names what narrows something; blanks narrow nothing', () => {
    expect(activeFilters({ ...noFilters, typed: '  ', branch: 'North' })).toEqual(['branch'])
  })
})

describe('countWords({ shown, matching, all })', () => {
  test('says how many there are, how many match, and how many are shown', () => {
    expect(countWords({ shown: 1, matching: 1, all: 1 })).toBe('1 case')
    expect(countWords({ shown: 50, matching: 120, all: 120 })).toBe('The first 50 of 120 cases')
    expect(countWords({ shown: 12, matching: 12, all: 120 })).toBe('12 of 120 cases')
    expect(countWords({ shown: 50, matching: 70, all: 120 })).toBe(
      'The first 50 of 70 that match, of 120 cases',
    )
    expect(countWords({ shown: 0, matching: 0, all: 120 })).toBe('0 of 120 cases')
  })
})
