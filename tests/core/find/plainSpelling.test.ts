import fc from 'fast-check'
import { expect, test } from 'vitest'
import { plainSpelling } from '@/lib/core/find'

test('plainSpelling(text) takes case, dashes, blanks and look-alikes for one spelling', () => {
  expect(plainSpelling('lf2-o8o b')).toBe(plainSpelling('LF2-080-8'))
  expect(plainSpelling('SO1L')).toBe('5011')
})

test('plainSpelling(text) keeps apart what differs in one character that looks like no other', () => {
  expect(plainSpelling('LF2-080-A')).not.toBe(plainSpelling('LF2-080-C'))
  expect(plainSpelling('LF2-080')).not.toBe(plainSpelling('LF2-090'))
})

test('plainSpelling(text) of a plain spelling is itself, and that of nothing is nothing', () => {
  fc.assert(
    fc.property(fc.string(), (text) => plainSpelling(plainSpelling(text)) === plainSpelling(text)),
    { seed: 20260112 },
  )
  expect(plainSpelling(' -/ ')).toBe('')
})
