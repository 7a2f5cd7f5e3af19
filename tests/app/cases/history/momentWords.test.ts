import { expect, test } from 'vitest'
import {
  dayWords,
  isAfter,
  isBefore,
  momentWords,
  onTheClock,
  withOffset,
  withoutOffset,
  zoneHere,
  zoneWords,
} from '@/app/cases/history/momentWords'

/** Offsets are written and read as ISO 8601 and RFC 3339 have them: local time = UTC + offset. */
test.each([
  [0, 'UTC'],
  [-420, 'UTC−7'],
  [330, 'UTC+5:30'],
  [-210, 'UTC−3:30'],
])('zoneWords: %s minutes ahead is %s', (ahead, words) => {
  expect(zoneWords(ahead)).toBe(words)
})

test('a moment is said by the clock of the zone, with the zone', () => {
  expect(momentWords('2026-01-12T16:45:00.000Z', -420)).toBe('12 Jan 2026, 09:45, UTC−7')
  expect(momentWords('2026-01-12T16:45:00.000Z', 330)).toBe('12 Jan 2026, 22:15, UTC+5:30')
})

test('near midnight the zone decides the day as well', () => {
  expect(dayWords('2026-01-13T02:10:00.000Z', -420)).toBe('12 Jan 2026')
  expect(dayWords('2026-01-13T02:10:00.000Z', 60)).toBe('13 Jan 2026')
})

test('a moment that was written with its offset keeps its own clock, whatever zone it is read in', () => {
  expect(momentWords('2026-01-12T09:40:00-07:00', 60)).toBe('12 Jan 2026, 09:40, UTC−7')
  expect(onTheClock('2026-01-12T09:40:00+05:30', 0)).toEqual({
    day: '2026-01-12',
    time: '09:40',
    zone: 'UTC+5:30',
  })
})

test('without a zone it is the clock of this device', () => {
  const moment = '2026-07-01T12:00:00.000Z'
  const here = new Date(moment)
  expect(onTheClock(moment).time).toBe(
    `${String(here.getHours()).padStart(2, '0')}:${String(here.getMinutes()).padStart(2, '0')}`,
  )
  expect(zoneHere(moment)).toBeCloseTo(-here.getTimezoneOffset())
})

test('withOffset makes of a form’s date and time the same moment everywhere', () => {
  expect(withOffset('2026-01-12T09:40', -420)).toBe('2026-01-12T09:40:00-07:00')
  expect(withOffset('2026-01-12T09:40', 330)).toBe('2026-01-12T09:40:00+05:30')
  expect(Date.parse(withOffset('2026-01-12T09:40')!)).toBe(new Date('2026-01-12T09:40').getTime())
})

test('what is no date and time is none', () => {
  expect(withOffset('')).toBeUndefined()
  expect(withOffset('2026-01-12')).toBeUndefined()
  expect(withOffset('2026-13-40T09:40')).toBeUndefined()
})

test('withoutOffset shows a moment by the clock of this device, and saving it again leaves it the same moment', () => {
  for (const moment of ['2026-01-12T09:40:00-07:00', '2026-07-01T23:50:00+05:30', '2026-01-12T16:45:00.000Z'])
    expect(Date.parse(withOffset(withoutOffset(moment))!)).toBe(Date.parse(moment))
})

test('a day is before a moment only once it is over everywhere, and after it only while it has begun nowhere', () => {
  // At noon of the universal clock it is midnight, 12 hours behind, and 02:00 of the next day, 14 hours ahead.
  const noon = '2026-01-12T12:00:00.000Z'
  expect(['2026-01-11', '2026-01-12', '2026-01-13', '2026-01-14'].map((day) => isBefore(day, noon))).toEqual([
    true,
    false,
    false,
    false,
  ])
  expect(['2026-01-11', '2026-01-12', '2026-01-13', '2026-01-14'].map((day) => isAfter(day, noon))).toEqual([
    false,
    false,
    false,
    true,
  ])
})
