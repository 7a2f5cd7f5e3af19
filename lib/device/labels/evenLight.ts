import { blurred, type Greys, shade } from './greys'

/** How far around a pixel its background is looked for, as a share of the picture's shorter side. */
const backgroundShare = 0.06

/**
 * A picture as if it were lit evenly, dark letters on white: each pixel against the light around it, so that a torch's
 * glare and a dark corner fall away, then stretched from the darkest to the lightest. White letters on black are turned
 * round first.
 */
export function evenLight(picture: Greys): Greys {
  const { width, height } = picture
  const radius = Math.max(4, Math.round(Math.min(width, height) * backgroundShare))
  const upright = isLightOnDark(picture, radius) ? inverted(picture) : picture
  const background = blurred(lightest(upright, Math.max(2, Math.round(radius / 3))), radius)
  const data = upright.data.map((grey, at) => Math.min(255, (255 * grey) / Math.max(1, background.data[at]!)))
  return stretched({ width, height, data })
}

/**
 * Whether the letters are the lighter part. Most of a label is ground: where the ground is the darker part, more pixels
 * stand out above their surroundings far than below.
 */
function isLightOnDark(picture: Greys, radius: number): boolean {
  const around = blurred(picture, radius)
  let [above, below] = [0, 0]
  for (const [at, grey] of picture.data.entries()) {
    const apart = grey - around.data[at]!
    if (apart > 0) above += apart * apart
    else below += apart * apart
  }
  return above > 1.3 * below
}

const inverted = (picture: Greys): Greys => ({ ...picture, data: picture.data.map((grey) => 255 - grey) })

/** Each pixel the lightest of the square around it: letters close, and the ground is left. */
function lightest(picture: Greys, radius: number): Greys {
  return alongColumns(alongRows(picture, radius), radius)
}

function alongRows({ width, height, data }: Greys, radius: number): Greys {
  const lightest = new Uint8Array(data.length)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let best = 0
      const end = Math.min(width - 1, x + radius)
      for (let column = Math.max(0, x - radius); column <= end; column++) {
        const grey = data[y * width + column]!
        if (grey > best) best = grey
      }
      lightest[y * width + x] = best
    }
  return { width, height, data: lightest }
}

function alongColumns({ width, height, data }: Greys, radius: number): Greys {
  const lightest = new Uint8Array(data.length)
  for (let y = 0; y < height; y++) {
    const end = Math.min(height - 1, y + radius)
    for (let row = Math.max(0, y - radius); row <= end; row++)
      for (let x = 0; x < width; x++) {
        const grey = data[row * width + x]!
        if (grey > lightest[y * width + x]!) lightest[y * width + x] = grey
      }
  }
  return { width, height, data: lightest }
}

/** From the darkest hundredth to the lightest half: the ground becomes white, the letters black. */
function stretched(picture: Greys): Greys {
  const [dark, light] = [shade(picture, 0.01), shade(picture, 0.5)]
  const span = Math.max(24, light - dark)
  return {
    ...picture,
    data: picture.data.map((grey) => Math.max(0, Math.min(255, (255 * (grey - (light - span))) / span))),
  }
}
