import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatOf, whereItEnds } from '@/lib/server/photos/whereItEnds'
import { formats, pictureOf } from './somePictures'

test.each(formats)(
  'whereItEnds(bytes, %s) is the last byte of a picture and nothing else',
  async (format) => {
    const bytes = await pictureOf(format)
    expect(formatOf(bytes)).toBe(format)
    expect(whereItEnds(bytes, format)).toBe(bytes.length)
  },
)

test('whereItEnds finds the end of a progressive JPEG with restarts and many scans, and of one made of a thumbnail inside', async () => {
  const { default: sharp } = await import('sharp')
  const progressive = await sharp(await pictureOf('png', 300, 200))
    .jpeg({ progressive: true, quality: 40 })
    .toBuffer()
  expect(whereItEnds(progressive, 'jpeg')).toBe(progressive.length)
  // An end marker inside of a segment, as a thumbnail has one, is not the end.
  const inside = Buffer.concat([
    progressive.subarray(0, 2),
    Buffer.from([0xff, 0xfe, 0x00, 0x06, 0xff, 0xd9, 0xff, 0xd9]),
    progressive.subarray(2),
  ])
  expect(whereItEnds(inside, 'jpeg')).toBe(inside.length)
})

test.each(formats)('whatever is put behind a %s, its end stays where it was', async (format) => {
  const bytes = await pictureOf(format, 24, 16)
  fc.assert(
    fc.property(fc.uint8Array({ minLength: 1, maxLength: 300 }), (more) => {
      expect(whereItEnds(Buffer.concat([bytes, more]), format)).toBe(bytes.length)
    }),
  )
})

test.each(formats)('a %s that is cut off anywhere has no end', async (format) => {
  const bytes = await pictureOf(format, 24, 16)
  fc.assert(
    fc.property(fc.integer({ min: 0, max: bytes.length - 1 }), (length) => {
      expect(whereItEnds(bytes.subarray(0, length), format)).toBeUndefined()
    }),
  )
})

test('no bytes at all make it fail or run for ever', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), fc.constantFrom(...formats), (bytes, format) => {
      const end = whereItEnds(Buffer.from(bytes), format)
      expect(end === undefined || (end > 0 && end <= bytes.length)).toBe(true)
    }),
    { numRuns: 500 },
  )
})

test.each([
  ['an animation', 'GIF89a........'],
  ['a drawing', '<svg xmlns="http://www.w3.org/2000/svg"/>'],
  ['a page', '<!doctype html><script>alert(1)</script>'],
  ['an archive', 'PK\u0003\u0004...........'],
  ['a document', '%PDF-1.7 ............'],
  ['another picture format', 'MM\u0000*............'],
  ['a container of another kind', 'RIFF....WAVEfmt '],
  ['nothing', ''],
])('formatOf(bytes) knows no format of: %s', (_, text) => {
  expect(formatOf(Buffer.from(text, 'latin1'))).toBeUndefined()
})
