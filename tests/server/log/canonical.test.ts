import fc from 'fast-check'
import { expect, test } from 'vitest'
import { canonicalBytes } from '@/lib/server/log/canonical'

const bytesOf = (text: string) => canonicalBytes(JSON.parse(text))

test('canonicalBytes(record) gives the sample output of RFC 8785, 3.2.2 and 3.2.3', () => {
  const sample = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`
  expect(bytesOf(sample)).toEqual({
    ok: true,
    value: String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
  })
})

test('canonicalBytes(record) sorts names by UTF-16 code units, as the example of RFC 8785, 3.2.3 does', () => {
  const example = String.raw`{
    "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
    "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
  }`
  const bytes = bytesOf(example)
  expect(bytes.ok && [...bytes.value.matchAll(/:"([^"]+)"/g)].map(([, value]) => value)).toEqual([
    'Carriage Return',
    'One',
    'Control',
    'Latin Small Letter O With Diaeresis',
    'Euro Sign',
    'Emoji: Grinning Face',
    'Hebrew Letter Dalet With Dagesh',
  ])
})

test('canonicalBytes(record) holds the same record, and is the same whatever order its fields came in', () => {
  const shuffled = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(shuffled)
    if (typeof value !== 'object' || value === null) return value
    const turned = Object.entries(value).reverse()
    return Object.fromEntries(turned.map(([key, inner]) => [key, shuffled(inner)]))
  }
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.jsonValue({ maxDepth: 4 })), (any) => {
      const sent = JSON.parse(JSON.stringify(any)) as Record<string, unknown>
      const bytes = canonicalBytes(Object.freeze(sent))
      const again = canonicalBytes(shuffled(sent) as Record<string, unknown>)
      expect(again).toEqual(bytes)
      expect(bytes.ok && JSON.parse(bytes.value)).toEqual(sent)
    }),
    { seed: 8785, numRuns: 200 },
  )
})

test('canonicalBytes(record) keeps a field called __proto__ as a field', () => {
  expect(bytesOf('{"b":1,"__proto__":{"a":2}}')).toEqual({ ok: true, value: '{"__proto__":{"a":2},"b":1}' })
})

test('canonicalBytes(record) holds lists and objects 100 deep, and is a problem for any deeper, up to any depth', () => {
  const nested = (levels: number, open: string, close: string) =>
    bytesOf(`{"a":${open.repeat(levels - 1)}${close.repeat(levels - 1)}}`)
  expect(nested(100, '[', ']')).toMatchObject({ ok: true })
  for (const levels of [101, 10_000, 100_000]) {
    expect(nested(levels, '[', ']')).toMatchObject({ problem: { message: /nested too deeply/ } })
  }
  expect(bytesOf(`${'{"a":'.repeat(5000)}{}${'}'.repeat(5000)}`)).toMatchObject({ ok: false })
})

test('canonicalBytes(record) is a problem for half a surrogate pair and for a number beyond a double', () => {
  expect(bytesOf(String.raw`{"a":"\ud83d"}`)).toMatchObject({ problem: { message: /half a character/ } })
  expect(bytesOf('{"a":{"b":[1e999]}}')).toMatchObject({ problem: { message: /too large/ } })
})
