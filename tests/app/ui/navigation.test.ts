import { existsSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { belongsTo, mainPlaces, morePlaces } from '@/app/ui/navigation'

test('the main places follow the order of the work: find, work a case, ask by phone, ask why it came back, look back', () => {
  expect(mainPlaces.map(({ words }) => words)).toEqual(['Find', 'Cases', 'Phone desk', 'Callbacks', 'Log'])
})

test.each([...mainPlaces, ...morePlaces])('$words leads to a page that is there', ({ path: address }) => {
  const page = path.resolve(import.meta.dirname, '../../../app/(team)', `.${address}`, 'page.tsx')
  expect(existsSync(page)).toBe(true)
})

test('a new case belongs to Cases', () => {
  expect(mainPlaces.filter(({ path }) => belongsTo('/cases/new', path)).map(({ words }) => words)).toEqual([
    'Cases',
  ])
})
