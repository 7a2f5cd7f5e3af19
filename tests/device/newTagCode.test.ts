import { expect, test } from 'vitest'
import { isTagCode, tagAlphabet } from '@/lib/core/tag'
import { newTagCode } from '@/lib/device/newTagCode'

test('newTagCode() makes whole codes, never one twice', () => {
  const codes = Array.from({ length: 2000 }, () => newTagCode())
  expect(codes.every(isTagCode)).toBe(true)
  expect(new Set(codes).size).toBe(codes.length)
})

test('newTagCode(fill) takes no byte that would make some characters likelier than others', () => {
  // 232 = 8 · 29 is the first byte left out; 0 to 231 give every character eight times.
  let next = 231
  const code = newTagCode((bytes) => {
    bytes.fill(255)
    bytes[5] = 232
    bytes[9] = next--
  })
  expect(code.slice(0, 11)).toBe(Array.from({ length: 11 }, (_, at) => tagAlphabet[(231 - at) % 29]).join(''))
})
