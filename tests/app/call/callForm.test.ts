import { expect, test } from 'vitest'
import { type AnswerForm, agreesTwice, withOffset } from '@/app/call/callForm'
import { freshReport } from '@/app/report/reportForm'
import type { PositionBody } from '@/lib/records/kinds/position'

const position: PositionBody = {
  rangeId: '01920000-0000-7000-8000-000000000002',
  name: 'Low fire',
  stage: 'low fire',
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  sense: 'suction',
}
const typed = (asWritten: string, again: string, unit: AnswerForm['report']['unit'] = '') => ({
  report: { ...freshReport(position), asWritten, unit },
  again,
})

test('agreesTwice(answer) takes the second in the unit of the first', () => {
  expect(agreesTwice(typed('closes at -0.60 in wc', '.6'))).toBe(true)
  expect(agreesTwice(typed('closes at 150 Pa', '150'))).toBe(true)
  expect(agreesTwice(typed('.60', '0.60', 'inH2O'))).toBe(true)
})

test('agreesTwice(answer) tells a slip of one digit, of the decimal point and of the unit', () => {
  for (const again of ['.06', '6.0', '.61', '.60 mbar', '', 'nothing', '.6 and .7'])
    expect([again, agreesTwice(typed('closes at -0.60 in wc', again))]).toEqual([again, false])
})

test('agreesTwice(answer) holds every value and every tolerance that is said again against the first', () => {
  const both = 'close .60 ±.05 open .45 ±.05 in wc'
  expect(agreesTwice(typed(both, 'close .60 open .45'))).toBe(true)
  expect(agreesTwice(typed(both, 'close .60 ±.05 open .45 ±.05'))).toBe(true)
  expect(agreesTwice(typed(both, 'close .60 open .54'))).toBe(false)
  expect(agreesTwice(typed(both, 'close .60 ±.06 open .45'))).toBe(false)
  expect(agreesTwice(typed(both, '.60'))).toBe(false)
})

test('withOffset(local) is the same moment with this device’s offset, and leaves alone what is no moment', () => {
  const local = '2026-07-08T13:10'
  expect(withOffset(local)).toMatch(/^2026-07-08T13:10:00[+-]\d\d:\d\d$/)
  expect(Date.parse(withOffset(local))).toBe(Date.parse(local))
  expect(withOffset('soon')).toBe('soon')
})
