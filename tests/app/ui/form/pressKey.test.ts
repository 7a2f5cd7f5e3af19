import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type PadKey, pressKey, type Typed } from '@/app/ui/form/pressKey'

const at = (text: string, start = text.length, end = start): Typed => Object.freeze({ text, start, end })
const anyKey = fc.constantFrom<PadKey>(
  '0',
  '1',
  '2',
  '3',
  '4',
  '5',
  '6',
  '7',
  '8',
  '9',
  'point',
  'minus',
  'back',
)

test('pressKey types digits and a point where the caret is', () => {
  expect(pressKey(at('0.5'), '8')).toEqual(at('0.58'))
  expect(pressKey(at('058', 1), 'point')).toEqual(at('0.58', 2))
})

test('pressKey replaces what is selected', () => {
  expect(pressKey(at('0.58', 2, 4), '6')).toEqual(at('0.6'))
  expect(pressKey(at('0.58', 0, 4), 'back')).toEqual(at(''))
})

test('pressKey ignores a second point, and a point after a decimal comma', () => {
  expect(pressKey(at('0.5'), 'point')).toEqual(at('0.5'))
  expect(pressKey(at('0,5'), 'point')).toEqual(at('0,5'))
  expect(pressKey(at('0.5', 1, 2), 'point')).toEqual(at('0.5', 2))
})

test('pressKey puts a minus in front, or takes it away, and leaves the caret at its digit', () => {
  expect(pressKey(at('0.58', 2), 'minus')).toEqual(at('-0.58', 3))
  expect(pressKey(at('-0.58', 3), 'minus')).toEqual(at('0.58', 2))
  expect(pressKey(at('-0.58', 0), 'minus')).toEqual(at('0.58', 0))
})

test('pressKey deletes the character before the caret, and nothing at the start', () => {
  expect(pressKey(at('0.58', 2), 'back')).toEqual(at('058', 1))
  expect(pressKey(at('0.58', 0), 'back')).toEqual(at('0.58', 0))
})

test('pressKey twice on minus changes nothing', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^\d{0,4}$/), (text) => {
      expect(pressKey(pressKey(at(text), 'minus'), 'minus')).toEqual(at(text))
    }),
    { seed: 20260112 },
  )
})

test('pressKey only ever writes what can become a number, with the caret inside it', () => {
  fc.assert(
    fc.property(fc.array(anyKey, { maxLength: 20 }), (keys) => {
      const typed = keys.reduce(pressKey, at(''))
      expect(typed.text).toMatch(/^-?\d*\.?\d*$/)
      expect(typed.start).toBe(typed.end)
      expect(typed.start).toBeGreaterThanOrEqual(0)
      expect(typed.end).toBeLessThanOrEqual(typed.text.length)
    }),
    { seed: 20260112 },
  )
})
