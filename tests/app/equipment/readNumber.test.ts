import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readNumber } from '@/app/equipment/form/readNumber'

const read = (text: string) => readNumber(text, 'the elevation in feet', '4800')

test('readNumber reads a number as people type it, with either decimal mark and with thousands parted', () => {
  const typed: [string, number][] = [
    ['4800', 4800],
    [' 4,800 ', 4800],
    ['1 250', 1250],
    ['1,250,000', 1_250_000],
    ['1,250.5', 1250.5],
    ['.5', 0.5],
    ['7,5', 7.5],
    ['0,001', 0.001],
    ['12.', 12],
    ['0', 0],
  ]
  expect(typed.map(([text]) => read(text))).toEqual(typed.map(([, value]) => ({ ok: true, value })))
})

test('readNumber gives back any whole number of feet as a desk prints it, thousands parted or not', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 30_000 }), (feet) => {
      expect(read(String(feet))).toEqual({ ok: true, value: feet })
      expect(read(feet.toLocaleString('en'))).toEqual({ ok: true, value: feet })
    }),
    { seed: 7 },
  )
})

test('readNumber takes nothing else for a number, and its problem says what to type', () => {
  for (const text of ['', ' ', '.', 'about 4800', '4800 ft', '-5', '1e3', 'Infinity', '1,2,3', '4.8.0'])
    expect(read(text)).toEqual({
      ok: false,
      problem: {
        code: 'number-unclear',
        message: 'Type the elevation in feet as a number, for instance 4800.',
      },
    })
})
