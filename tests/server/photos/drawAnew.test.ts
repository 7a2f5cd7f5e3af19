import { deflateSync } from 'node:zlib'
import ExifReader from 'exifreader'
import { strToU8, zipSync } from 'fflate'
import sharp from 'sharp'
import { expect, test, vi } from 'vitest'
import { drawAnew, drawSmall, mostPixels } from '@/lib/server/photos/drawAnew'
import { formats, pictureOf, withMetadata } from './somePictures'

const problemOf = async (bytes: Buffer) => {
  const drawn = await drawAnew(bytes)
  return drawn.ok ? undefined : drawn.problem
}

test.each(formats)('drawAnew(bytes) keeps a %s as what it is, at its size', async (format) => {
  const drawn = await drawAnew(await pictureOf(format, 60, 40))
  expect(drawn).toMatchObject({ ok: true, value: { mediaType: `image/${format}`, width: 60, height: 40 } })
})

test('nothing of what a camera writes into a file is in what is kept: no place, no camera, no moment, no comment', async () => {
  const sent = await withMetadata(1)
  const before = ExifReader.load(sent, { expanded: true })
  expect(before.gps).toMatchObject({ Latitude: 51.5 })
  expect(before.exif?.Make?.description).toBe('Kestrel Optics')
  const drawn = await drawAnew(sent)
  if (!drawn.ok) throw new Error(drawn.problem.message)
  const after = ExifReader.load(drawn.value.bytes, { expanded: true })
  expect([after.gps, after.exif, after.xmp, after.iptc]).toEqual([undefined, undefined, undefined, undefined])
  for (const text of ['Kestrel', 'Mill Row', '2026:01:12', 'Exif'])
    expect(drawn.value.bytes.includes(text), text).toBe(false)
})

/** Where the blue corner of the sensor's picture is, once it is upright (Exif 2.32, Orientation). */
const corners = [
  [1, 60, 40, 'upper left'],
  [3, 60, 40, 'lower right'],
  [6, 40, 60, 'upper right'],
  [8, 40, 60, 'lower left'],
] as const

test.each(corners)(
  'a picture of orientation %i is kept upright, %i by %i',
  async (orientation, width, height, where) => {
    const drawn = await drawAnew(await withMetadata(orientation))
    if (!drawn.ok) throw new Error(drawn.problem.message)
    expect(drawn.value).toMatchObject({ width, height })
    const { data } = await sharp(drawn.value.bytes).raw().toBuffer({ resolveWithObject: true })
    const isBlue = (x: number, y: number) => data[3 * (y * width + x) + 2]! > 128
    const found = {
      'upper left': isBlue(5, 5),
      'upper right': isBlue(width - 5, 5),
      'lower left': isBlue(5, height - 5),
      'lower right': isBlue(width - 5, height - 5),
    }
    expect(found).toEqual({
      'upper left': false,
      'upper right': false,
      'lower left': false,
      'lower right': false,
      [where]: true,
    })
  },
)

const archive = Buffer.from(zipSync({ 'run.html': strToU8('<script>alert(1)</script>') }))
const page = Buffer.from('<!doctype html><html><script>alert(1)</script></html>')

test.each(formats)(
  'a %s with an archive, a page or one more byte behind its end is refused in a sentence',
  async (format) => {
    const picture = await pictureOf(format)
    // Each opens as a picture all the same: that is what makes it two things at once.
    for (const more of [archive, page, Buffer.from([0]), picture]) {
      const both = Buffer.concat([picture, more])
      expect((await sharp(both).metadata()).format).toBe(format)
      expect(await problemOf(both)).toMatchObject({
        code: 'more-than-a-picture',
        message: expect.stringMatching(/^There is more in this file than a picture.+\.$/),
      })
    }
  },
)

test('a page hidden in a comment of a picture is not in what is kept', async () => {
  const picture = await pictureOf('jpeg')
  const length = Buffer.alloc(2)
  length.writeUInt16BE(page.length + 2)
  const hiding = Buffer.concat([
    picture.subarray(0, 2),
    Buffer.from([0xff, 0xfe]),
    length,
    page,
    picture.subarray(2),
  ])
  const drawn = await drawAnew(hiding)
  if (!drawn.ok) throw new Error(drawn.problem.message)
  expect(hiding.includes('<script>')).toBe(true)
  expect(drawn.value.bytes.includes('<script>')).toBe(false)
})

/** A PNG of one colour that says it is this large: a few hundred bytes to send, and all of its pixels to decode. */
function bombOf(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
    const length = Buffer.alloc(4)
    length.writeUInt32BE(data.length)
    const sum = Buffer.alloc(4)
    sum.writeUInt32BE(crc32(body))
    return Buffer.concat([length, body, sum])
  }
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header[8] = 1
  const rows = Buffer.alloc(Math.min(height * Math.ceil(1 + width / 8), 8_000_000))
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

/** ISO/IEC 15948, annex D. */
function crc32(bytes: Buffer): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}

test.each([
  ['as wide as a wall', 8000, 8000],
  ['one line, endlessly long', 30_000, 1],
  ['all that a header can say', 2_147_483_647, 2_147_483_647],
])('a bomb, %s, is refused in a sentence before it is decoded', async (_, width, height) => {
  const bomb = bombOf(width, height)
  expect(bomb.length).toBeLessThan(100_000)
  const before = process.memoryUsage().rss
  const found = await problemOf(bomb)
  expect(['too-many-pixels', 'damaged-picture']).toContain(found?.code)
  expect(found?.message).toMatch(/^The picture .+\.$/)
  expect(process.memoryUsage().rss - before).toBeLessThan(100 * 1024 * 1024)
})

test('the largest picture that is let in is drawn, and one row more is not', async () => {
  const width = 6000
  const height = mostPixels / width
  expect((await drawAnew(bombOf(width, height))).ok).toBe(true)
  expect(await problemOf(bombOf(width, height + 1))).toMatchObject({ code: 'too-many-pixels' })
})

test('what is no picture, moves, is cut off or is damaged is refused, each in its sentence', async () => {
  expect(await problemOf(Buffer.from('GIF89a'))).toMatchObject({ code: 'no-picture' })
  expect(await problemOf(Buffer.from('<svg/>'))).toMatchObject({ code: 'no-picture' })
  const moving = await sharp([await pictureOf('png', 20, 20, 1), await pictureOf('png', 20, 20, 2)], {
    join: { animated: true },
  })
    .webp()
    .toBuffer()
  expect(await problemOf(moving)).toMatchObject({
    code: 'no-picture',
    message: expect.stringContaining('moves'),
  })
  for (const format of formats) {
    const picture = await pictureOf(format)
    expect(await problemOf(picture.subarray(0, picture.length - 30))).toMatchObject({
      code: 'damaged-picture',
    })
  }
  // Its end is there and its middle is not.
  const jpeg = await pictureOf('jpeg', 200, 200)
  const hollow = Buffer.concat([jpeg.subarray(0, jpeg.length / 2), jpeg.subarray(jpeg.length - 2)])
  expect(await problemOf(hollow)).toMatchObject({ code: 'damaged-picture' })
})

test.each([
  'timeout: 83% complete\nVipsImage: killed for image "temp-22"\nvips2png: unable to write to target target',
  'vips_tracked: out of memory -- size == 96MB',
  'unix error: Cannot allocate memory',
])('a sound picture that the server fails at is no damaged one: “%s”', async (message) => {
  const picture = await pictureOf('png')
  const failing = vi.spyOn(sharp.prototype, 'toBuffer').mockRejectedValueOnce(new Error(message))
  expect(await problemOf(picture)).toMatchObject({
    code: 'try-again',
    message: expect.stringContaining('Nothing is wrong with it'),
  })
  failing.mockRestore()
  expect((await drawAnew(picture)).ok).toBe(true)
})

test('drawSmall(kept) makes a small JPEG of any picture, and leaves a small one its size', async () => {
  const small = await drawSmall(await pictureOf('png', 900, 600))
  expect(await sharp(small).metadata()).toMatchObject({ format: 'jpeg', width: 320, height: 213 })
  expect(await sharp(await drawSmall(await pictureOf('webp', 60, 40))).metadata()).toMatchObject({
    width: 60,
  })
})
