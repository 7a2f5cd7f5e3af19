import fc from 'fast-check'
import { expect, test } from 'vitest'
import { printable } from '@/app/callbacks/letter/printable'

test.each([
  ['Mill Row 12: LF2-080-B', 'Mill Row 12: LF2-080-B'],
  ['the log’s “head” – 12 × 3 °', 'the log’s “head” – 12 × 3 °'],
  ['UTC−7', 'UTC–7'],
  ['Škoda, Straße, Æbler', 'Škoda, Straße, Æbler'],
  ['Łódź', '¿ódz'],
  ['Čapek', 'Capek'],
  ['温水', '¿¿'],
  ['\u0065\u0301', 'é'],
  ['a\nb', 'a¿b'],
])('printable(%j) is %j', (text, expected) => {
  expect(printable(text)).toBe(expected)
})

test('whatever is given, only characters of the standard fonts come out, and doing it twice changes nothing', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      const once = printable(text)
      expect(once).toMatch(/^[\u0020-\u007e\u00a0-\u00ff€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ]*$/)
      expect(printable(once)).toBe(once)
    }),
  )
})
