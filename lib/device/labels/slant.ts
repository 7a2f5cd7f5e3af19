import { type Greys, scaled } from './greys'

/** How far a label is looked for askew, either way, in degrees. Further round, the picture is taken again. */
const mostDegrees = 20
/** The longest side, in pixels, that is enough to see how lines run. */
const enough = 480

/**
 * By how many degrees clockwise the lines of a picture run askew: turned back by as much, they lie level. Found by
 * trying: where lines are level, rows of letters and the white between them differ most (Postl's projection method,
 * as described by Hull, "Document image skew detection", 1998).
 * @param picture dark letters on white
 */
export function slantOf(picture: Greys): number {
  const small = scaled(picture, Math.min(1, enough / Math.max(picture.width, picture.height)))
  const ink: [x: number, y: number][] = []
  for (const [at, grey] of small.data.entries())
    if (grey < 128) ink.push([at % small.width, Math.floor(at / small.width)])
  if (ink.length === 0) return 0
  const level = (degrees: number) => unevenness(ink, small, degrees)
  const rough = best(level, 0, mostDegrees, 1)
  return best(level, rough, 0.75, 0.25)
}

/** The middle, or the angle around it in steps, at which something is greatest. */
function best(of: (degrees: number) => number, middle: number, reach: number, step: number): number {
  let found = middle
  let most = of(middle)
  for (let away = step; away <= reach; away += step)
    for (const degrees of [middle - away, middle + away]) {
      const value = of(degrees)
      if (value > most) {
        most = value
        found = degrees
      }
    }
  return found
}

/** How much the ink of neighbouring rows differs, with rows that run askew by an angle. */
function unevenness(ink: readonly [number, number][], { width, height }: Greys, degrees: number): number {
  const slope = Math.tan((degrees * Math.PI) / 180)
  const shift = Math.ceil(width * Math.tan((mostDegrees * Math.PI) / 180)) + 2
  const rows = new Float64Array(height + 2 * shift)
  for (const [x, y] of ink) {
    const row = y - x * slope + shift
    const whole = Math.floor(row)
    if (whole < 0 || whole + 1 >= rows.length) continue
    rows[whole]! += 1 - (row - whole)
    rows[whole + 1]! += row - whole
  }
  let sum = 0
  for (let row = 1; row < rows.length; row++) sum += (rows[row]! - rows[row - 1]!) ** 2
  return sum
}
