import fc from 'fast-check'

/** Names that mean something to JavaScript, to SQL or to a database library, or that nobody would think of. */
export const oddKeys = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'toJSON',
  '$ne',
  '$.body',
  '',
  ' ',
  '0',
  '\u0000',
  'ключ',
  'k'.repeat(500),
]

/** Stands in a value for what no value of JavaScript can be; `jsonText` puts the text itself there. */
const texts = {
  '<a number beyond a double>': '1e999',
  '<nested 150 deep>': nested('[', ']', 150),
  '<nested 3000 deep>': nested('{"a":[', ']}', 1500),
  '<nested 20000 deep>': nested('[', ']', 20_000),
  '<half a character>': '"\\ud83d"',
  '<a long text>': `"${'x'.repeat(20_000)}"`,
} as const
const tooMuch = Object.keys(texts)

/** These can never be kept, whatever the field: a number, a depth and a text that no canonical JSON holds. */
export const neverKept = tooMuch.filter((name) => name !== '<a long text>')

function nested(open: string, close: string, times: number): string {
  return open.repeat(times) + close.repeat(times)
}

const oddTexts = [
  '',
  ' ',
  '\n',
  'NaN',
  'Infinity',
  '-0',
  '1e999',
  'null',
  'undefined',
  'true',
  '[object Object]',
  '%',
  '\'; DROP TABLE "LogEntry"; --',
  '" OR ""="',
  '../../session-secret',
  '<script>alert(1)</script>',
  '\u0000',
  'a\u0000b',
  '\u202etxet',
  '\ufeff',
  '\ufffd',
  '\u200b\u200b',
  // Longer once they are normalized (NFKC) or in lower case.
  'ﷺ'.repeat(20),
  'ﷺ'.repeat(200),
  '㌖'.repeat(40),
  'ŉ'.repeat(120),
  'İ'.repeat(150),
  'e\u0301'.repeat(40),
  '😀'.repeat(64),
  '9'.repeat(400),
  '0000-01-01T00:00:00Z',
  '9999-12-31T23:59:59.999999999+23:59',
  '-271821-04-20T00:00:00Z',
  '+275760-09-13T00:00:00.001Z',
  '2026-02-30T12:00:00Z',
  '2026-01-12T12:00:60Z',
  '1970-01-01',
  '01920000-0000-7000-8000-000000000000',
  '01920000-0000-4000-8000-000000000000',
  ...oddKeys,
  ...tooMuch,
]
const oddNumbers = [0, -1, 1.5, 2, 1001, 1e21, 1e308, -1e308, 5e-324, 2 ** 53, -(2 ** 63), 4_294_967_296]

const plainValue = fc.oneof(
  fc.constantFrom<unknown>(null, true, false, [], {}, [[]], [{}]),
  fc.constantFrom<unknown>(...oddNumbers),
  { weight: 4, arbitrary: fc.constantFrom<unknown>(...oddTexts) },
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.string({ unit: 'binary', maxLength: 80 }),
  fc.uuid(),
)

/** Any value that JSON can hold, and some that it can only just. */
export const oddValue: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 8, arbitrary: plainValue },
  { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 3, stringUnit: 'binary' }) },
  { weight: 1, arbitrary: fc.array(plainValue, { maxLength: 6 }) },
  {
    weight: 1,
    arbitrary: fc
      .array(fc.tuple(fc.constantFrom(...oddKeys), plainValue), { maxLength: 4 })
      .map((entries) => Object.fromEntries(entries)),
  },
)

/** The value as JSON, with the texts in place of their names. */
export const jsonText = (value: unknown): string =>
  (JSON.stringify(value) ?? '').replace(/"(<[a-z0-9 ]+>)"/g, (whole, name: string) =>
    name in texts ? texts[name as keyof typeof texts] : whole,
  )

/** A text cut short, with a byte of it broken, or nothing like JSON at all. */
export const brokenJson = (text: fc.Arbitrary<string>): fc.Arbitrary<Uint8Array<ArrayBuffer>> => {
  const bytes = text.map((whole) => new TextEncoder().encode(whole))
  return fc.oneof(
    fc.tuple(bytes, fc.nat()).map(([whole, at]) => whole.slice(0, at % Math.max(1, whole.length))),
    fc.tuple(bytes, fc.nat(), fc.constantFrom(0xff, 0xc0, 0xed, 0x80, 0x00)).map(([whole, at, odd]) => {
      const broken = whole.slice()
      broken[at % broken.length] = odd
      return broken
    }),
    fc.uint8Array({ maxLength: 60 }).map((any) => Uint8Array.from(any)),
    fc
      .constantFrom(
        '',
        'records',
        '{',
        '[',
        '"',
        "{'name':1}",
        'undefined',
        'NaN',
        '{"a":1}{"a":1}',
        '\ufeff{}',
      )
      .map((said) => new TextEncoder().encode(said)),
  )
}
