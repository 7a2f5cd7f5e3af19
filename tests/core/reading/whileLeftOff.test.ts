import { expect, test } from 'vitest'
import { adviceCodes, adviceText, whileLeftOff } from '@/lib/core/reading'

test('whileLeftOff keeps the order, and no step that runs the furnace or its inducer', () => {
  const kept = whileLeftOff(adviceCodes)
  expect(kept).toEqual(adviceCodes.filter((code) => kept.includes(code)))
  for (const code of kept) expect(['power off', 'outside', 'at rest']).toContain(adviceText[code].state)
  expect(kept).toContain('look-at-the-terminals')
  expect(kept).toContain('clear-hose-and-port')
  expect(kept).not.toContain('watch-for-a-minute')
  expect(kept).not.toContain('check-inducer-speed-and-volts')
})

test('whileLeftOff leaves out what is done at rest and leads to a start: the reading that comes next, the list for a faulty switch', () => {
  expect(whileLeftOff(['rest-agrees', 'before-the-switch-is-called-faulty'])).toEqual([])
})

test('whileLeftOff keeps every stop', () => {
  const stops = adviceCodes.filter((code) => code.startsWith('stop-'))
  expect(whileLeftOff(stops)).toEqual(stops)
})
