import { describe, expect, test } from 'vitest'
import { evenLight } from '@/lib/device/labels/evenLight'
import {
  blurred,
  cropped,
  type Greys,
  greyAt,
  greysOf,
  scaled,
  shade,
  turned,
} from '@/lib/device/labels/greys'
import { lettersOf } from '@/lib/device/labels/letters'
import { asPgm, preparations } from '@/lib/device/labels/preparations'
import { slantOf } from '@/lib/device/labels/slant'

const paper = (width: number, height: number, grey = 255): Greys => ({
  width,
  height,
  data: new Uint8Array(width * height).fill(grey),
})
const ink = (picture: Greys, left: number, top: number, width: number, height: number, grey = 0): Greys => {
  for (let y = top; y < top + height; y++)
    picture.data.fill(grey, y * picture.width + left, y * picture.width + left + width)
  return picture
}
/** Lines of upright strokes, as letters are seen from afar. */
const written = (): Greys => {
  const picture = paper(600, 400)
  for (let row = 0; row < 4; row++)
    for (let letter = 0; letter < 16; letter++) ink(picture, 100 + letter * 24, 100 + row * 50, 12, 28)
  return picture
}
const share = ({ data }: Greys, dark: (grey: number) => boolean) => data.filter(dark).length / data.length

describe('greys', () => {
  test('greysOf(pixels) weighs red, green and blue as BT.601 does', () => {
    const data = new Uint8Array([255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255, 255, 255, 255, 255])
    expect([...greysOf({ width: 4, height: 1, data }).data]).toEqual([76, 150, 29, 255])
  })

  test('greyAt(picture, x, y) mixes the four pixels around, and is white outside', () => {
    const picture: Greys = { width: 2, height: 1, data: new Uint8Array([0, 200]) }
    expect([greyAt(picture, 0, 0), greyAt(picture, 0.5, 0), greyAt(picture, 9, 9)]).toEqual([0, 100, 255])
  })

  test('blurred(picture, radius) is the mean of the square around, by brute force', () => {
    const picture: Greys = {
      width: 7,
      height: 5,
      data: Uint8Array.from({ length: 35 }, (_, at) => (at * 37) % 256),
    }
    const soft = blurred(picture, 2)
    for (let y = 0; y < 5; y++)
      for (let x = 0; x < 7; x++) {
        const around: number[] = []
        for (let row = Math.max(0, y - 2); row <= Math.min(4, y + 2); row++)
          for (let column = Math.max(0, x - 2); column <= Math.min(6, x + 2); column++)
            around.push(picture.data[row * 7 + column]!)
        const mean = around.reduce((sum, grey) => sum + grey, 0) / around.length
        expect(soft.data[y * 7 + x]).toBe(Math.floor(mean + 0.5))
      }
  })

  test('turned(picture, 90) moves what is above to the right; there and back is the picture', () => {
    const picture = ink(paper(20, 20), 8, 0, 4, 4)
    const right = turned(picture, 90)
    expect(right.data[10 * 20 + 18]).toBeLessThan(64)
    expect([...turned(turned(picture, 90), 270).data]).toEqual([...picture.data])
  })

  test('scaled(picture, factor) and cropped(picture, box) keep what is in them where it was', () => {
    expect(scaled(paper(40, 20), 0.5)).toMatchObject({ width: 20, height: 10 })
    const part = cropped(ink(paper(20, 20), 5, 5, 2, 2), { left: -2, top: 4, width: 10, height: 4 })
    expect(part).toMatchObject({ width: 10, height: 4 })
    expect([...part.data.entries()].filter(([, grey]) => grey === 0).map(([at]) => at)).toEqual([
      17, 18, 27, 28,
    ])
  })

  test('shade(picture, share) is the grey that so many pixels are no lighter than', () => {
    expect(shade({ width: 4, height: 1, data: new Uint8Array([10, 20, 30, 40]) }, 0.5)).toBe(20)
  })
})

describe('evenLight(picture)', () => {
  const inShadow = (grey: number, at: number) => grey * (0.2 + (0.8 * (at % 600)) / 600)

  test('makes the ground white and the letters dark, from one bright side to one dark', () => {
    const lit: Greys = {
      ...written(),
      data: written().data.map((grey, at) => inShadow(grey === 0 ? 60 : 230, at)),
    }
    const even = evenLight(lit)
    for (const [at, grey] of written().data.entries())
      if (grey === 0) expect(even.data[at], `letter at ${at}`).toBeLessThan(128)
    expect(share(even, (grey) => grey > 200)).toBeGreaterThan(0.85)
  })

  test('turns white letters on black round', () => {
    const even = evenLight({ ...written(), data: written().data.map((grey) => 255 - grey) })
    expect(share(even, (grey) => grey > 200)).toBeGreaterThan(0.85)
  })
})

test.each([-17, -8, -2.5, 0, 3, 11.25, 19])(
  'slantOf(picture) finds lines that run %f degrees askew',
  (degrees) => {
    expect(Math.abs(slantOf(turned(written(), degrees)) - degrees)).toBeLessThanOrEqual(0.75)
  },
)

describe('lettersOf(picture)', () => {
  test('keeps letters with their points and dashes, and drops edges, shadows and dirt', () => {
    const picture = written()
    ink(picture, 112 + 4, 124, 4, 4) // a decimal point between the first two letters
    ink(picture, 20, 20, 560, 6) // an edge of the label
    ink(picture, 560, 40, 20, 340) // a shadow
    ink(picture, 40, 380, 3, 3) // dirt
    const { data } = lettersOf(picture)
    const at = (x: number, y: number) => data[y * picture.width + x]
    expect([at(105, 110), at(117, 125)]).toEqual([0, 0])
    expect([at(300, 22), at(570, 200), at(41, 381)]).toEqual([255, 255, 255])
  })
})

describe('preparations(picture)', () => {
  test('gives two pictures of the letters alone, level and of one size', () => {
    const prepared = preparations(turned(written(), 7))!
    for (const each of prepared) expect(Math.abs(slantOf(each))).toBeLessThanOrEqual(0.75)
    const [smooth, sharp] = prepared
    expect([sharp.width, sharp.height]).toEqual([smooth.width, smooth.height])
    expect(smooth.width / smooth.height).toBeGreaterThan(1.7)
  })

  test('says that no letters are in sight', () => {
    expect(preparations(paper(200, 100))).toBeUndefined()
    expect(preparations(paper(200, 100, 0))).toBeUndefined()
  })
})

test('asPgm(picture) writes the format’s head and the pixels (Netpbm, pgm)', () => {
  const file = asPgm({ width: 2, height: 1, data: new Uint8Array([7, 9]) })
  expect(new TextDecoder().decode(file.subarray(0, 11))).toBe('P5\n2 1\n255\n')
  expect([...file.subarray(11)]).toEqual([7, 9])
})
