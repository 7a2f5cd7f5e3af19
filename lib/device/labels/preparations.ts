import { evenLight } from './evenLight'
import { blurred, cropped, type Greys, scaled, turned } from './greys'
import { lettersOf } from './letters'
import { slantOf } from './slant'

/** The side, in pixels, that a picture is brought to: letters of a label that fills it are then large enough. */
const workingSide = 1000
/** Small pictures gain nothing by being blown up further. */
const mostEnlarged = 2.5
/** How far around the letters the picture is kept, in pixels: their soft edges help recognition. */
const softEdge = 5
/** White around the letters, in pixels. */
const margin = 24

/**
 * A picture made ready for recognition in two ways that go wrong in different places: once smooth, once in black and
 * white. What both are read as is no whim of either. Undefined when no letters are in sight.
 */
export function preparations(picture: Greys): readonly [smooth: Greys, sharp: Greys] | undefined {
  const factor = Math.min(mostEnlarged, workingSide / Math.max(picture.width, picture.height))
  const even = evenLight(scaled(picture, factor))
  const letters = lettersOf(blackAndWhite(even))
  if (!letters.data.includes(0)) return undefined
  const slant = slantOf(letters)
  const level = turned(letters, -slant)
  const box = boxOf(level)
  return [cropped(turned(onlyNear(even, letters), -slant), box), cropped(level, box)]
}

/** Each pixel against the mean around it: black where it is clearly darker (Bradley and Roth, 2007). */
function blackAndWhite(picture: Greys): Greys {
  const around = blurred(picture, Math.round(picture.width / 24))
  const smooth = blurred(picture, 1)
  return { ...picture, data: smooth.data.map((grey, at) => (grey < 0.8 * around.data[at]! ? 0 : 255)) }
}

/** A picture in which all is white that is no letter’s, nor its soft edge’s. */
function onlyNear(picture: Greys, letters: Greys): Greys {
  const near = blurred(letters, softEdge)
  return { ...picture, data: picture.data.map((grey, at) => (near.data[at]! < 253 ? grey : 255)) }
}

/** Where the ink of a picture is, with a margin around it. */
function boxOf({ width, height, data }: Greys): { left: number; top: number; width: number; height: number } {
  let [left, top, right, bottom] = [width, height, 0, 0]
  for (let at = 0; at < data.length; at++) {
    if (data[at]! > 127) continue
    const [x, y] = [at % width, Math.floor(at / width)]
    if (x < left) left = x
    if (x > right) right = x
    if (y < top) top = y
    if (y > bottom) bottom = y
  }
  return {
    left: left - margin,
    top: top - margin,
    width: right - left + 1 + 2 * margin,
    height: bottom - top + 1 + 2 * margin,
  }
}

/** A picture in the simplest format there is (Netpbm's binary PGM), which recognition opens without a canvas. */
export function asPgm({ width, height, data }: Greys): Uint8Array {
  const head = new TextEncoder().encode(`P5\n${width} ${height}\n255\n`)
  const file = new Uint8Array(head.length + data.length)
  file.set(head)
  file.set(data, head.length)
  return file
}
