import sharp from 'sharp'

export type Format = 'jpeg' | 'png' | 'webp'
export const formats: readonly Format[] = ['jpeg', 'png', 'webp']

/** A picture of noise, so that there is something to compress, of any size. The same seed gives the same picture. */
export async function pictureOf(format: Format, width = 60, height = 40, seed = 1): Promise<Buffer> {
  let state = seed
  const pixels = Buffer.alloc(width * height * 3)
  for (let at = 0; at < pixels.length; at++) {
    // Numerical Recipes, "Quick and Dirty" generator.
    state = (1664525 * state + 1013904223) >>> 0
    pixels[at] = state >>> 24
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .toFormat(format)
    .toBuffer()
}

/** A phone's photo of a room: place, camera, moment, a comment and a turned sensor are in it. */
export const withMetadata = (orientation: number): Promise<Buffer> =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: '#d02020' } })
    // A blue corner, upper left as the sensor sees it.
    .composite([
      { input: { create: { width: 30, height: 20, channels: 3, background: '#2020d0' } }, left: 0, top: 0 },
    ])
    .jpeg()
    .withMetadata({ orientation })
    .withExifMerge({
      IFD0: { Make: 'Kestrel Optics', ImageDescription: 'Mill Row 12' },
      IFD2: { DateTimeOriginal: '2026:01:12 09:41:07' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '8/1 20/1 0/1',
      },
    })
    .toBuffer()
