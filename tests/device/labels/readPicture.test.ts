import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { LabelReader } from '@/lib/device/labels/labelReader'
import { labelPictures } from '../../setup/labelPictures'
import { openReaderHere, readMade, saysNothingElse, saysWhatIsStated } from '../../setup/readLabelPicture'

// The whole way from pixels to candidates, on a few pictures of a seed of their own; tests/bench/labels.bench.ts
// measures it on many.
let reader: LabelReader
beforeAll(async () => {
  reader = await openReaderHere()
}, 60_000)
afterAll(() => reader.close())

describe('readPicture(reader, picture, partNumbersOnFile)', () => {
  test('reads clean, turned, white-on-black and lost-point labels, and offers nothing that is wrong', {
    timeout: 90_000,
  }, async () => {
    const all = await labelPictures(11, 12)
    const chosen = [0, 1, 5, 11].map((at) => all[at]!)
    expect(chosen.map(({ name }) => name)).toEqual([
      'three lines, clean',
      'closes and opens, turned',
      'three lines, light on dark',
      expect.stringMatching(/^without its point/),
    ])
    for (const picture of chosen) {
      const reading = await readMade(reader, picture, [picture.partNumber])
      const offered = reading.values.filter((each) => each.offered)
      expect(
        offered.filter((each) => !saysNothingElse(each, picture)),
        picture.name,
      ).toEqual([])
      expect(reading.parts[0], picture.name).toMatchObject({ text: picture.partNumber, offered: true })
      if (picture.pointLost) {
        expect(offered).toEqual([])
        expect(reading.values[0]?.why.join(' '), picture.name).toContain('decimal point may be lost')
      } else {
        expect(
          offered.some((each) => saysWhatIsStated(each, picture)),
          picture.name,
        ).toBe(true)
      }
    }
  })

  test('of a picture without letters says nothing', async () => {
    const grey = new Uint8ClampedArray(300 * 200 * 4).fill(128)
    const picture = { name: 'nothing', partNumber: '', stated: [], pointLost: false, width: 300, height: 200 }
    const reading = await readMade(reader, { ...picture, data: new Uint8Array(grey) }, [])
    expect(reading).toEqual({ values: [], parts: [] })
  })
})
