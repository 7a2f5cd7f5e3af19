import sharp from 'sharp'
import { seededRandom } from '@/lib/core/seeded'
import type { Action } from '@/lib/core/vocabulary'

/** One pressure that a made label states: what a reader has to find. Inches of water column or pascals, as printed. */
type Stated = { printed: string; inPascals: boolean; action?: Exclude<Action, 'not stated'> }

/** A made picture of a label that was never printed, and what stands on it. */
export type LabelPicture = {
  /** The layout, and what was done to the picture, for whoever looks at a failure. */
  name: string
  partNumber: string
  stated: readonly Stated[]
  /** A line that looks like a rating with its decimal point gone: no number of this label may be offered. */
  pointLost: boolean
  width: number
  height: number
  /** Red, green, blue, opacity. */
  data: Uint8Array
}

type Random = ReturnType<typeof seededRandom>

const oneOf = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!
const between = (random: Random, low: number, high: number): number => low + random() * (high - low)
const digits = (random: Random, count: number): string =>
  Array.from({ length: count }, () => Math.floor(random() * 10)).join('')

/** Numbers of parts that nobody makes, in the manner of the demo's makers. */
const partNumberStyles: readonly ((random: Random) => string)[] = [
  (random) => `OM-${digits(random, 4)}`,
  (random) => `T-40-${digits(random, 3)}`,
  (random) => `61Q.${digits(random, 4)}`,
  (random) => `SM ${digits(random, 3)}/31`,
  (random) => `${digits(random, 4)}-${digits(random, 3)}`,
  (random) => `KX${digits(random, 5)}B`,
]

const inches = (random: Random): string => {
  const value = between(random, 0.15, 1.95).toFixed(2)
  return random() < 0.5 ? value.replace(/^0/, '') : value
}

type Layout = { name: string; lines: string[]; stated: Stated[] }

const plain = (printed: string, action?: Stated['action']): Stated => ({
  printed,
  inPascals: false,
  ...(action === undefined ? {} : { action }),
})

/** Ways to print a label. None is anybody's. */
const layouts: readonly ((random: Random, partNumber: string) => Layout)[] = [
  (random, partNumber) => {
    const value = inches(random)
    return {
      name: 'three lines',
      lines: [`P/N ${partNumber}`, `PF ${value} IN WC`, `S/N ${digits(random, 5)} 28 VDC`],
      stated: [plain(value)],
    }
  },
  (random, partNumber) => {
    const [close, open] = [inches(random), inches(random)]
    return {
      name: 'closes and opens',
      lines: [
        `PART NO. ${partNumber}`,
        `CLOSE ${close}" WC`,
        `OPEN ${open}" WC`,
        `DATE ${digits(random, 4)}`,
      ],
      stated: [plain(close, 'closes'), plain(open, 'opens')],
    }
  },
  (random, partNumber) => {
    const value = inches(random)
    return {
      name: 'with a tolerance',
      lines: ['ORRINMOOR', partNumber, `SET ${value} ±.05 IN. W.C.`, 'FACTORY SET'],
      stated: [plain(value)],
    }
  },
  (random, partNumber) => {
    const [close, open] = [
      String(Math.round(between(random, 60, 400))),
      String(Math.round(between(random, 45, 300))),
    ]
    return {
      name: 'in pascals',
      lines: [`PN: ${partNumber}`, `CLOSES ${close} Pa`, `OPENS ${open} Pa`, '24 VAC 5 A'],
      stated: [
        { printed: close, inPascals: true, action: 'closes' },
        { printed: open, inPascals: true, action: 'opens' },
      ],
    }
  },
  (random, partNumber) => {
    const value = inches(random)
    return {
      name: 'number below its word',
      lines: ['AIR SWITCH', partNumber, 'CLOSE', `-${value} IN WC`, `LOT ${digits(random, 6)}`],
      stated: [plain(value, 'closes')],
    }
  },
]

/** One label whose decimal point was never printed, or has worn away. */
const withoutPoint = (random: Random, partNumber: string): Layout => ({
  name: 'without its point',
  lines: [`P/N ${partNumber}`, `PF ${Math.floor(between(random, 20, 95))} IN WC`, `S/N ${digits(random, 5)}`],
  stated: [],
})

const faces = ['DejaVu Sans', 'DejaVu Sans Mono', 'DejaVu Sans Condensed', 'DejaVu Serif'] as const

/** What befalls a picture in a basement. */
const circumstances = [
  'clean',
  'turned',
  'blurred',
  'glare',
  'low light',
  'small',
  'light on dark',
  'all at once',
] as const
type Circumstance = (typeof circumstances)[number]

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;')

/** The picture of a label lying on something, as an SVG of 1000 by 700. */
function drawing(random: Random, { lines }: Layout, circumstance: Circumstance): string {
  const hard = circumstance === 'all at once'
  const size = 62
  const step = size * 1.5
  const [width, height] = [820, Math.round(step * lines.length + 60)]
  const dark = circumstance === 'light on dark'
  const [ground, ink] = dark ? ['#22262a', '#e6e3da'] : ['#e9e6dc', '#1b1d20']
  const face = oneOf(random, faces)
  const turn = circumstance === 'turned' ? between(random, -14, 14) : between(random, -3, 3) * (hard ? 2 : 1)
  const text = lines
    .map((line, at) => {
      const length = Math.min(width - 80, line.length * size * 0.7)
      const fit =
        line.length * size * 0.7 > width - 80 ? ` textLength="${length}" lengthAdjust="spacingAndGlyphs"` : ''
      return `<text x="40" y="${Math.round(step * (at + 1) - 8)}"${fit}>${escaped(line)}</text>`
    })
    .join('')
  return `<svg xmlns="http://www.w3.org/2000/svg" width="1000" height="700">
    <rect width="1000" height="700" fill="#7d7a72"/>
    <g transform="rotate(${turn.toFixed(2)} 500 350) translate(90 ${Math.round(350 - height / 2)})">
      <rect width="${width}" height="${height}" rx="10" fill="${ground}"/>
      <g font-family="${face}" font-size="${size}" font-weight="${random() < 0.4 ? 700 : 400}" fill="${ink}">${text}</g>
    </g></svg>`
}

/** A spot of torch light, brightest in its middle. */
function glare(random: Random, strength: number): string {
  const [x, y] = [between(random, 200, 800), between(random, 180, 520)]
  return `<svg xmlns="http://www.w3.org/2000/svg" width="1000" height="700"><defs>
    <radialGradient id="g" cx="${x.toFixed(0)}" cy="${y.toFixed(0)}" r="320" gradientUnits="userSpaceOnUse">
      <stop offset="0" stop-color="#fff" stop-opacity="${strength.toFixed(2)}"/><stop offset="1" stop-color="#fff" stop-opacity="0"/>
    </radialGradient></defs><rect width="1000" height="700" fill="url(#g)"/></svg>`
}

async function photographed(random: Random, layout: Layout, circumstance: Circumstance) {
  const hard = circumstance === 'all at once'
  const is = (which: Circumstance) => circumstance === which || hard
  let picture = await sharp(Buffer.from(drawing(random, layout, circumstance)))
    .removeAlpha()
    .png()
    .toBuffer()
  if (is('glare')) {
    const spot = Buffer.from(glare(random, hard ? 0.5 : between(random, 0.6, 0.85)))
    picture = await sharp(picture)
      .composite([{ input: spot }])
      .png()
      .toBuffer()
  }
  let shot = sharp(picture).removeAlpha()
  if (is('blurred')) shot = shot.blur(hard ? 1.6 : between(random, 2, 3.2))
  if (is('low light')) shot = shot.linear(between(random, 0.16, 0.28), between(random, 4, 14))
  if (is('small')) shot = shot.resize(hard ? 620 : 480)
  const { data, info } = await shot.raw().toBuffer({ resolveWithObject: true })
  const noise = is('low light') ? 5 : 4
  for (let at = 0; at < data.length; at++) {
    // Three of them together are near enough to a bell.
    const away = (random() + random() + random() - 1.5) * 2 * noise
    data[at] = Math.max(0, Math.min(255, data[at]! + away))
  }
  const jpeg = await sharp(data, { raw: { width: info.width, height: info.height, channels: 3 } })
    .jpeg({ quality: 82 })
    .toBuffer()
  return sharp(jpeg).ensureAlpha().raw().toBuffer({ resolveWithObject: true })
}

/**
 * Made pictures of labels: every layout under every circumstance, one after the other, and of each round one label
 * without its decimal point. The same seed gives the same labels; the letters are those of this machine's DejaVu fonts.
 */
export async function labelPictures(seed: number, count: number): Promise<LabelPicture[]> {
  const random = seededRandom(seed)
  const pictures: LabelPicture[] = []
  for (let at = 0; at < count; at++) {
    const partNumber = oneOf(random, partNumberStyles)(random)
    const pointLost = at % 12 === 11
    const layout = pointLost
      ? withoutPoint(random, partNumber)
      : layouts[at % layouts.length]!(random, partNumber)
    const circumstance = circumstances[Math.floor(at / layouts.length + at) % circumstances.length]!
    const { data, info } = await photographed(random, layout, circumstance)
    pictures.push({
      name: `${layout.name}, ${circumstance}`,
      partNumber,
      stated: layout.stated,
      pointLost,
      width: info.width,
      height: info.height,
      data,
    })
  }
  return pictures
}
