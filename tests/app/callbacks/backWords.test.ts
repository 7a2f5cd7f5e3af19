import { expect, test } from 'vitest'
import { backWords } from '@/app/callbacks/backWords'
import { lastDay, untilWords } from '@/app/callbacks/lastDay'

const at = (moment: string): number => Date.parse(moment)

test.each([
  ['2025-11-25T16:00Z', '2025-12-23T09:00Z', 'job ended 25 Nov 2025, back 23 Dec 2025, 28 days'],
  // Less than a day by the clock, and yet the next date.
  ['2025-11-25T22:00Z', '2025-11-26T06:00Z', 'job ended 25 Nov 2025, back 26 Nov 2025, 1 day'],
  ['2025-11-25T08:00Z', '2025-11-25T17:00Z', 'job ended 25 Nov 2025, back 25 Nov 2025, the same day'],
])('backWords: the days are those between the two dates printed: %s to %s', (ended, back, words) => {
  expect(backWords({ jobEndedAt: at(ended), backAt: at(back) })).toBe(words)
})

test('lastDay: a window that ends at midnight ends with the day before; within a day, on that day', () => {
  expect(lastDay(at('2026-12-01T00:00Z'))).toBe('30 Nov 2026')
  expect(lastDay(at('2026-12-01T13:00Z'))).toBe('1 Dec 2026')
  expect(untilWords(at('2026-12-01T00:00Z'))).toBe('can come back until 30 Nov 2026')
})
