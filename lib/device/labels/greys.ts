/** A picture in greys, 0 black to 255 white, row by row. */
export type Greys = { width: number; height: number; data: Uint8Array }

type Pixels = { width: number; height: number; data: Uint8Array | Uint8ClampedArray }

/** The greys of a picture in red, green, blue and opacity: luma as in ITU-R BT.601-7, 2.5.1. */
export function greysOf({ width, height, data }: Pixels): Greys {
  const greys = new Uint8Array(width * height)
  for (let at = 0; at < greys.length; at++) {
    greys[at] = 0.299 * data[4 * at]! + 0.587 * data[4 * at + 1]! + 0.114 * data[4 * at + 2]! + 0.5
  }
  return { width, height, data: greys }
}

/** The grey at a place between pixels, mixed from the four around it (bilinear); white outside the picture. */
export function greyAt({ width, height, data }: Greys, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)]
  if (left < -1 || top < -1 || left >= width || top >= height) return 255
  const [across, down] = [x - left, y - top]
  const pixel = (column: number, row: number) =>
    column < 0 || row < 0 || column >= width || row >= height ? 255 : data[row * width + column]!
  const upper = pixel(left, top) * (1 - across) + pixel(left + 1, top) * across
  const lower = pixel(left, top + 1) * (1 - across) + pixel(left + 1, top + 1) * across
  return upper * (1 - down) + lower * down
}

/** A picture made `factor` times as large; smaller ones are averaged first, so that thin strokes stay. */
export function scaled(picture: Greys, factor: number): Greys {
  const source = factor < 0.6 ? blurred(picture, Math.round(0.5 / factor)) : picture
  const width = Math.max(1, Math.round(picture.width * factor))
  const height = Math.max(1, Math.round(picture.height * factor))
  const data = new Uint8Array(width * height)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      data[y * width + x] = greyAt(source, (x + 0.5) / factor - 0.5, (y + 0.5) / factor - 0.5) + 0.5
  return { width, height, data }
}

/** A quarter turn is no exact number of the computer’s; it must not make a picture one pixel larger. */
const rounding = 1e-6

/** A picture turned clockwise about its middle, on a sheet large enough for it. Degrees. */
export function turned(picture: Greys, degrees: number): Greys {
  if (degrees === 0) return picture
  const angle = (degrees * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const width = Math.ceil(Math.abs(picture.width * cos) + Math.abs(picture.height * sin) - rounding)
  const height = Math.ceil(Math.abs(picture.width * sin) + Math.abs(picture.height * cos) - rounding)
  const data = new Uint8Array(width * height)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [across, down] = [x - (width - 1) / 2, y - (height - 1) / 2]
      data[y * width + x] =
        greyAt(
          picture,
          across * cos + down * sin + (picture.width - 1) / 2,
          down * cos - across * sin + (picture.height - 1) / 2,
        ) + 0.5
    }
  }
  return { width, height, data }
}

/** A part of a picture; what lies outside it is white. */
export function cropped(
  picture: Greys,
  { left, top, width, height }: { left: number; top: number; width: number; height: number },
): Greys {
  const data = new Uint8Array(width * height).fill(255)
  for (let y = 0; y < height; y++) {
    const row = y + top
    if (row < 0 || row >= picture.height) continue
    const [from, to] = [Math.max(0, left), Math.min(picture.width, left + width)]
    if (from < to)
      data.set(
        picture.data.subarray(row * picture.width + from, row * picture.width + to),
        y * width + from - left,
      )
  }
  return { width, height, data }
}

/** Each pixel the mean of the square of side 2·radius + 1 around it, as far as that lies in the picture. */
export function blurred(picture: Greys, radius: number): Greys {
  if (radius < 1) return picture
  const { width, height } = picture
  const sums = summed(picture)
  const data = new Uint8Array(width * height)
  for (let y = 0; y < height; y++) {
    const [top, bottom] = [Math.max(0, y - radius), Math.min(height, y + radius + 1)]
    for (let x = 0; x < width; x++) {
      const [left, right] = [Math.max(0, x - radius), Math.min(width, x + radius + 1)]
      const sum =
        sums[bottom * (width + 1) + right]! -
        sums[top * (width + 1) + right]! -
        sums[bottom * (width + 1) + left]! +
        sums[top * (width + 1) + left]!
      data[y * width + x] = sum / ((right - left) * (bottom - top)) + 0.5
    }
  }
  return { width, height, data }
}

/** Sums over the rectangle above and left of each corner (an integral image). */
function summed({ width, height, data }: Greys): Float64Array {
  const sums = new Float64Array((width + 1) * (height + 1))
  for (let y = 0; y < height; y++) {
    let row = 0
    for (let x = 0; x < width; x++) {
      row += data[y * width + x]!
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1]! + row
    }
  }
  return sums
}

/** The grey that a share of the pixels, 0 to 1, are no lighter than. */
export function shade({ data }: Greys, share: number): number {
  const counts = new Uint32Array(256)
  for (const grey of data) counts[grey]! += 1
  let seen = 0
  for (let grey = 0; grey < 256; grey++) {
    seen += counts[grey]!
    if (seen >= share * data.length) return grey
  }
  return 255
}
