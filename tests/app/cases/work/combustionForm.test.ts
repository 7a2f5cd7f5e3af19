import { expect, test } from 'vitest'
import { spanWords } from '@/app/cases/work/chanceWords'
import { freshCombustion, readCombustionForm } from '@/app/cases/work/combustionForm'

const of = { caseId: 'c', furnaceId: 'f', visitId: 'v' }
const gapsOf = (typed: Partial<typeof freshCombustion>) => {
  const read = readCombustionForm({ ...freshCombustion, when: 'as found', ...typed }, of)
  return 'gaps' in read ? read.gaps : {}
}

test('everything that is missing or cannot be read is told at once, in words of its field', () => {
  expect(
    gapsOf({
      roomCoPpm: '2',
      flueCoPpm: '24',
      flueCoLimitPpm: '100',
      minutesRunning: '-10',
      minutesAsked: 'ten',
    }),
  ).toEqual({
    roomCoLimitPpm: expect.stringContaining('your employer has set'),
    oxygenPercent: expect.stringContaining('Type the oxygen'),
    flueCoLimitFrom: expect.stringContaining('where the limit is printed'),
    minutesRunning: 'Minutes are zero or more.',
    minutesAsked: '“ten” is no number. Type the minutes, for instance 15.',
  })
  expect(gapsOf({})).toEqual({ roomCoPpm: 'Type what the meter shows in the room or in the flue.' })
  expect(gapsOf({ roomCoPpm: '2', roomCoLimitPpm: '9' })).toEqual({})
})

test('an interval whose ends read the same is said once', () => {
  expect(spanWords([0.001, 0.004])).toBe('under 1 %')
  expect(spanWords([0.001, 0.4])).toBe('under 1 % to 40 %')
})
