import { beforeEach, expect, test, vi } from 'vitest'
import { openLabelReader } from '@/lib/device/labels/labelReader'
import { readLabelPhoto } from '@/lib/device/labels/readLabelPhoto'
import { readPicture } from '@/lib/device/labels/readPicture'
import { pixelsOfFile } from '@/lib/device/readers/pixels'

vi.mock('@/lib/device/labels/labelReader')
vi.mock('@/lib/device/labels/readPicture')
vi.mock('@/lib/device/readers/pixels')

const photo = new Blob(['x'])
const nothing = { values: [], parts: [] }
const part = { text: 'OM-7731', confidence: 90, offered: true, why: [], onFile: [], near: [] }
const reader = { words: vi.fn(), close: vi.fn(async () => undefined) }

beforeEach(() => {
  vi.clearAllMocks()
  vi.mocked(pixelsOfFile).mockResolvedValue({ width: 1, height: 1 } as ImageData)
  vi.mocked(openLabelReader).mockResolvedValue(reader)
})

test('readLabelPhoto(photo, onFile) gives what was read, and lets go of the reader', async () => {
  vi.mocked(readPicture).mockResolvedValue({ values: [], parts: [part] })
  expect(await readLabelPhoto(photo, ['OM-7731'])).toMatchObject({ ok: true, value: { parts: [part] } })
  expect(vi.mocked(readPicture).mock.calls[0]?.[2]).toEqual(['OM-7731'])
  expect(reader.close).toHaveBeenCalledOnce()
})

test('readLabelPhoto(…) lets go of the reader also when reading fails, and swallows nothing', async () => {
  vi.mocked(readPicture).mockRejectedValue(new Error('out of memory'))
  await expect(readLabelPhoto(photo, [])).rejects.toThrow('out of memory')
  expect(reader.close).toHaveBeenCalledOnce()
})

test('readLabelPhoto(…) says what to do about no picture, no reader and no letters', async () => {
  vi.mocked(readPicture).mockResolvedValue(nothing)
  expect(await readLabelPhoto(photo, [])).toMatchObject({ problem: { code: 'no-letters' } })
  vi.mocked(openLabelReader).mockRejectedValue(new Error('its files could not be fetched'))
  expect(await readLabelPhoto(photo, [])).toMatchObject({
    problem: { code: 'no-reader', message: expect.stringContaining('its files could not be fetched') },
  })
  vi.mocked(pixelsOfFile).mockResolvedValue(undefined)
  expect(await readLabelPhoto(photo, [])).toMatchObject({ problem: { code: 'no-picture' } })
})
