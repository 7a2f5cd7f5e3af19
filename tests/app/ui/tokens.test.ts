import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'

const css = readFileSync(path.resolve(import.meta.dirname, '../../../app/tokens.css'), 'utf8')

/** WCAG 2.2, "relative luminance". */
function luminance(hex: string): number {
  const full = hex.length === 4 ? hex.replaceAll(/[0-9a-f]/gi, '$&$&') : hex
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(full.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** WCAG 2.2, "contrast ratio". */
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (light + 0.05) / (dark + 0.05)
}

function token(name: string, scheme: 'light' | 'dark'): string {
  const value = new RegExp(`--${name}:\\s*([^;]+);`).exec(css)?.[1] ?? ''
  const [light, dark = light] = value.match(/#[0-9a-f]{3,6}/gi) ?? []
  const found = scheme === 'light' ? light : dark
  if (!found) throw new Error(`no colour is named --${name}`)
  return found
}

const schemes = ['light', 'dark'] as const
const textOnGround = [
  ['ink', 'paper'],
  ['ink', 'sheet'],
  ['ink', 'well'],
  ['ink', 'accent-faint'],
  ['ink', 'danger-faint'],
  ['quiet', 'paper'],
  ['quiet', 'sheet'],
  ['quiet', 'well'],
  ['accent', 'paper'],
  ['accent', 'sheet'],
  ['on-accent', 'accent'],
  ['danger', 'paper'],
  ['danger', 'sheet'],
  ['danger', 'danger-faint'],
  ['on-danger', 'danger-ground'],
] as const
const shapeOnGround = [
  ['edge', 'paper'],
  ['edge', 'sheet'],
  ['edge', 'well'],
  ['water', 'sheet'],
  ['water', 'paper'],
  ['ink', 'water'],
  ['focus', 'paper'],
  ['focus', 'sheet'],
  ['focus', 'well'],
] as const

test('the contrast formula gives the ratios that are published', () => {
  expect(contrast('#000', '#fff')).toBeCloseTo(21, 10) // WCAG 2.2: 21:1 is the greatest there is
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2) // widely quoted as just failing AA, from memory
  expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5) // and as just passing, from memory
})

test.each(schemes)('text is readable on every ground it stands on (1.4.3, 4.5 to 1), %s', (scheme) => {
  const faint = textOnGround.filter(
    ([text, ground]) => contrast(token(text, scheme), token(ground, scheme)) < 4.5,
  )
  expect(faint).toEqual([])
})

test.each(schemes)(
  'lines and shapes are seen on every ground they stand on (1.4.11, 3 to 1), %s',
  (scheme) => {
    const faint = shapeOnGround.filter(
      ([shape, ground]) => contrast(token(shape, scheme), token(ground, scheme)) < 3,
    )
    expect(faint).toEqual([])
  },
)

test('on paper everything is black, white or grey', () => {
  const print = css.slice(css.indexOf('@media print'), css.indexOf('@media (forced-colors'))
  for (const [colour] of print.matchAll(/#[0-9a-f]{3,6}/gi)) {
    const parts = colour.length === 4 ? [...colour.slice(1)] : colour.slice(1).match(/../g)
    expect(new Set(parts).size, colour).toBe(1)
  }
})
