import type { Greys } from './greys'

/** A patch of black that hangs together. Pixels are places in the picture's data. */
type Patch = { left: number; top: number; right: number; bottom: number; pixels: number[] }

/** Lower than this, in pixels, a patch is no letter: a point, a dash, or dirt. */
const lowestLetter = 9
/** Smaller than this, in pixels, it is dirt and no point. */
const leastInk = 4
/** Higher or wider than these shares of the picture it is an edge, a shadow or a line. */
const highestShare = 0.2
const widestShare = 0.3

const heightOf = ({ top, bottom }: Patch): number => bottom - top + 1
const widthOf = ({ left, right }: Patch): number => right - left + 1

/**
 * The letters of a picture in black and white, without what only looks like ink: edges of the label, shadows, dirt. A
 * letter has another of like height beside it; points and dashes are kept where there are letters around them.
 */
export function lettersOf(picture: Greys): Greys {
  const patches = patchesOf(picture)
  const large = patches.filter(
    (patch) =>
      heightOf(patch) >= lowestLetter &&
      heightOf(patch) <= highestShare * picture.height &&
      widthOf(patch) <= widestShare * picture.width,
  )
  const letters = large.filter((patch) =>
    large.some((other) => other !== patch && areNeighbours(patch, other)),
  )
  const around = coveredBy(letters, picture)
  const known = new Set(letters)
  const between = patches.filter((patch) => {
    const middle = Math.round((patch.top + patch.bottom) / 2) * picture.width
    return (
      !known.has(patch) &&
      patch.pixels.length >= leastInk &&
      widthOf(patch) <= widestShare * picture.width &&
      heightOf(patch) <= highestShare * picture.height &&
      around[middle + Math.round((patch.left + patch.right) / 2)] === 1
    )
  })
  const data = new Uint8Array(picture.data.length).fill(255)
  for (const { pixels } of [...letters, ...between]) for (const pixel of pixels) data[pixel] = 0
  return { ...picture, data }
}

/** Whether two patches can be letters of one line: of like height, and no further apart than a wide blank. */
function areNeighbours(one: Patch, other: Patch): boolean {
  const [high, low] = [Math.max(heightOf(one), heightOf(other)), Math.min(heightOf(one), heightOf(other))]
  if (low < 0.55 * high) return false
  const apart = Math.max(one.left, other.left) - Math.min(one.right, other.right)
  const shared = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
  return apart < 1.8 * high && shared > 0.4 * low
}

/** The places within reach of a letter's own points and dashes: as far as half its height around it. */
function coveredBy(letters: readonly Patch[], { width, height }: Greys): Uint8Array {
  const covered = new Uint8Array(width * height)
  for (const letter of letters) {
    const reach = Math.round(heightOf(letter) * 0.7)
    const [from, to] = [Math.max(0, letter.left - reach), Math.min(width, letter.right + reach + 1)]
    const bottom = Math.min(height - 1, letter.bottom + Math.round(reach / 3))
    for (let y = Math.max(0, letter.top); y <= bottom; y++) covered.fill(1, y * width + from, y * width + to)
  }
  return covered
}

/** All patches of black, pixels that touch at a side or a corner taken together. */
function patchesOf({ width, height, data }: Greys): Patch[] {
  const seen = new Uint8Array(data.length)
  const patches: Patch[] = []
  for (let start = 0; start < data.length; start++) {
    if (data[start] !== 0 || seen[start]) continue
    const patch: Patch = { left: width, top: height, right: 0, bottom: 0, pixels: [start] }
    seen[start] = 1
    for (let at = 0; at < patch.pixels.length; at++) {
      const pixel = patch.pixels[at]!
      const [x, y] = [pixel % width, Math.floor(pixel / width)]
      patch.left = Math.min(patch.left, x)
      patch.right = Math.max(patch.right, x)
      patch.top = Math.min(patch.top, y)
      patch.bottom = Math.max(patch.bottom, y)
      for (let row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++)
        for (let column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
          const next = row * width + column
          if (data[next] !== 0 || seen[next]) continue
          seen[next] = 1
          patch.pixels.push(next)
        }
    }
    patches.push(patch)
  }
  return patches
}
