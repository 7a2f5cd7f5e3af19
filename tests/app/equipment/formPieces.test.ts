import { expect, test } from 'vitest'
import { isNearOpen } from '@/app/equipment/form/NearQuestion'
import { nearNames } from '@/app/equipment/form/nearNames'
import { namesOf, readsTheSame } from '@/app/equipment/form/readsTheSame'
import { leadingBack, returnTo } from '@/app/equipment/form/returnTo'
import { dayOf } from '@/app/equipment/form/today'
import { trimmed } from '@/app/equipment/form/trimmed'
import { openPattern, patternsIn, rangesThatFit } from '@/app/equipment/modelPatterns'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { held } from '../setup/fakeDevice'
import { equipmentRecords, ids } from '../setup/smallFile'

test('trimmed takes the blanks off every text at every depth, and touches nothing else', () => {
  const body = Object.freeze({
    name: ' Larkfell 2 ',
    patterns: Object.freeze(['LF2-* ']),
    proof: Object.freeze({ page: ' 9' }),
    decimals: 2,
    kit: false,
    left: undefined,
  })
  expect(trimmed(body)).toEqual({
    name: 'Larkfell 2',
    patterns: ['LF2-*'],
    proof: { page: '9' },
    decimals: 2,
    kit: false,
    left: undefined,
  })
})

test('readsTheSame folds dashes, blanks, case and look-alikes, and nothing more', () => {
  const names = namesOf([
    { id: 'a', text: 'OM-7731' },
    { id: 'b', text: 'OM-7731K' },
    { id: 'c', text: 'OM-7732' },
  ])
  expect(readsTheSame(names, 'om 773I')).toEqual(['a'])
  expect(readsTheSame(names, '0M7731')).toEqual(['a'])
  expect(readsTheSame(names, 'OM-773')).toEqual([])
  expect(readsTheSame(names, '')).toEqual([])
  expect(readsTheSame(namesOf([]), 'OM-7731')).toEqual([])
})

test('nearNames finds names that hold what is typed or are a few slips off, and none that only shares letters', () => {
  const names = namesOf(['Orrinmoor', 'Vellamark', 'Tolland', 'Karst'].map((text) => ({ id: text, text })))
  for (const slip of ['Orinmoor', 'Orrinmore', 'orrin moore', 'Orrinmoor Heating', 'Orrin'])
    expect(nearNames(names, slip)).toEqual(['Orrinmoor'])
  expect(nearNames(names, 'Carst')).toEqual(['Karst'])
  for (const other of ['Moorin', 'Kurz', 'Marklane', 'Or', '', '--'])
    expect(nearNames(names, other)).toEqual([])
})

test('isNearOpen asks once for a set of near names, and again when the set is another', () => {
  const near = [{ id: 'a', words: 'Orrinmoor' }]
  expect(isNearOpen('', near)).toBe(true)
  expect(isNearOpen('a', near)).toBe(false)
  expect(isNearOpen('a', [...near, { id: 'b', words: 'Orrinmere' }])).toBe(true)
  expect(isNearOpen('a', [])).toBe(false)
})

test('returnTo leads back to the form that a record was missing from, and never out of the application', () => {
  const back = '/furnace/repair?furnace=a&position=b'
  for (const form of ['/equipment/add-part', '/equipment/add-part?position=b'])
    expect(returnTo(new URL(leadingBack(form, back), 'http://localhost').searchParams, '/equipment')).toBe(
      back,
    )
  for (const elsewhere of [
    '//elsewhere.example',
    '/\\elsewhere.example',
    'https://elsewhere.example',
    'furnace',
    '',
  ])
    expect(returnTo(new URLSearchParams([['then', elsewhere]]), '/equipment')).toBe('/equipment')
  expect(returnTo(new URLSearchParams(), '/equipment')).toBe('/equipment')
})

test('dayOf gives the day by the clock of the device, figures in twos', () => {
  expect(dayOf(new Date(2026, 0, 9, 23, 59))).toBe('2026-01-09')
  expect(dayOf(new Date(2025, 10, 30, 0, 0))).toBe('2025-11-30')
})

test('patternsIn takes one pattern a line, empty lines and blanks at the ends apart', () => {
  expect(patternsIn(' LF2-080-B \n\nLF2-0??-*;LF3 1 ')).toEqual(['LF2-080-B', 'LF2-0??-*', 'LF3 1'])
  expect(patternsIn('  \n')).toEqual([])
})

test('rangesThatFit finds the range whose pattern stands for a model, and none that is only near', () => {
  const other = '01920000-0000-7000-8000-0000000000bb'
  const file = foldTeamFile([
    ...equipmentRecords,
    ...held([
      [
        other,
        'equipment range',
        {
          makerId: ids.maker,
          name: 'Larkfell 3',
          modelPatterns: ['LF3-0??-*'],
          fuel: 'either',
          heat: 'not stated',
        },
      ],
    ]).map((record) => ({ ...record, seq: 50 })),
  ])
  expect(openPattern('LF2-0??-*')).toBe('LF2-0**-*')
  expect(rangesThatFit(file, 'lf2 080 b').map(({ id }) => id)).toEqual([ids.range])
  expect(rangesThatFit(file, 'LF3-060-A').map(({ id }) => id)).toEqual([other])
  expect(rangesThatFit(file, 'LF4-080-B')).toEqual([])
  expect(rangesThatFit(file, '')).toEqual([])
})
