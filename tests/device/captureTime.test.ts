import sharp from 'sharp'
import { expect, test } from 'vitest'
import { readCaptureTime } from '@/lib/device/picture/captureTime'
import { shrunkSize } from '@/lib/device/picture/prepare'

const photo = async (exif: Record<string, string>): Promise<ArrayBuffer> => {
  const plain = sharp({ create: { width: 8, height: 8, channels: 3, background: 'gray' } }).jpeg()
  const bytes = await (Object.keys(exif).length === 0 ? plain : plain.withExif({ IFD2: exif })).toBuffer()
  return new Uint8Array(bytes).buffer
}

test.each([
  ['the camera’s own clock', { DateTimeOriginal: '2026:01:12 09:41:07' }, '2026-01-12T09:41:07'],
  [
    'its offset, where the file has one',
    { DateTimeOriginal: '2026:01:12 09:41:07', OffsetTimeOriginal: '+01:00' },
    '2026-01-12T09:41:07+01:00',
  ],
  [
    'no offset that is none',
    { DateTimeOriginal: '2026:01:12 09:41:07', OffsetTimeOriginal: '+99:00' },
    '2026-01-12T09:41:07',
  ],
  ['nothing of a camera that was never set', { DateTimeOriginal: '0000:00:00 00:00:00' }, undefined],
  ['nothing of a day that there is not', { DateTimeOriginal: '2026:02:30 09:41:07' }, undefined],
  ['nothing of words', { DateTimeOriginal: 'yesterday' }, undefined],
  ['nothing of a file that says nothing', {}, undefined],
])('readCaptureTime(bytes) says %s', async (_, exif, said) => {
  expect(readCaptureTime(await photo(exif))).toBe(said)
})

test('readCaptureTime(bytes) says nothing of what is no picture', () => {
  expect(
    readCaptureTime(new TextEncoder().encode('not a picture at all').buffer as ArrayBuffer),
  ).toBeUndefined()
  expect(readCaptureTime(new ArrayBuffer(0))).toBeUndefined()
})

test('shrunkSize(width, height) leaves small pictures as they are, and brings the longest edge of others to 2048', () => {
  expect(shrunkSize(4032, 3024)).toEqual({ width: 2048, height: 1536 })
  expect(shrunkSize(3024, 4032)).toEqual({ width: 1536, height: 2048 })
  expect(shrunkSize(640, 480)).toEqual({ width: 640, height: 480 })
  expect(shrunkSize(20_000, 3)).toEqual({ width: 2048, height: 1 })
})
