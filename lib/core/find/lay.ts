import { wildcard } from './normalise'

/** A folded string, and the same with look-alikes made one. Both have the same length. */
export type Forms = { folded: string; alike: string }

/** How a typed piece lies in a text. Places are folded characters of the text. */
export type Lie = {
  /** One for each wrong, missing, doubled or swapped character, a tenth for each look-alike. */
  slips: number
  /** How many characters of the text lie before and behind the piece. */
  leftOver: number
  /** The places that what was typed accounts for, ascending. */
  taken: number[]
}

const slip = 10
const lookAlike = 1
const open = wildcard.charCodeAt(0)

/** The character codes of both forms, one after the other in memory that is used again. */
type Units = { length: number; folded: Uint16Array; alike: Uint16Array }

/**
 * Lays a typed piece into texts with the fewest slips: optimal string alignment (Damerau–Levenshtein in which a swap
 * of two neighbours is one slip and neither is touched again; Boytsov, ACM JEA 16, 2011). With ends 'free' the piece
 * may lie anywhere in the text. With ends 'whole' it must account for all of the text, in which each `*` takes any
 * run of characters for nothing and no swap reaches across one. Of equal lies the one reaching furthest right is taken. Time: the product of both
 * lengths.
 *
 *   lay({ folded: 'XY81', alike: 'XY81' })({ folded: 'AXY80', alike: 'AXY80' }, 'free')
 *   // { slips: 1, leftOver: 1, taken: [1, 2, 3] }
 */
export function lay(typed: Forms): (text: Forms, ends: 'free' | 'whole') => Lie {
  const typedUnits = readUnits(typed, emptyUnits(typed.folded.length))
  const rows = typedUnits.length
  let textUnits = emptyUnits(0)
  let tenths = new Uint16Array(rows + 1)

  return (text, ends) => {
    const columns = text.folded.length
    const whole = ends === 'whole'
    if (textUnits.folded.length < columns) {
      textUnits = emptyUnits(2 * columns)
      tenths = new Uint16Array((rows + 1) * (2 * columns + 1))
    }
    readUnits(text, textUnits)
    fillTenths(tenths, typedUnits, textUnits, whole)
    const last = rows * (columns + 1)
    let end = columns
    for (let column = columns - 1; !whole && column >= 0; column--) {
      if (tenths[last + column]! < tenths[last + end]!) end = column
    }
    const { start, taken } = traceBack(tenths, typedUnits, textUnits, whole, end)
    return { slips: tenths[last + end]! / slip, leftOver: whole ? 0 : columns - end + start, taken }
  }
}

const emptyUnits = (room: number): Units => ({
  length: 0,
  folded: new Uint16Array(room),
  alike: new Uint16Array(room),
})

function readUnits({ folded, alike }: Forms, into: Units): Units {
  into.length = folded.length
  for (let at = 0; at < folded.length; at++) {
    into.folded[at] = folded.charCodeAt(at)
    into.alike[at] = alike.charCodeAt(at)
  }
  return into
}

const stepTenths = (typed: Units, row: number, text: Units, column: number): number => {
  if (typed.folded[row - 1] === text.folded[column - 1]) return 0
  return typed.alike[row - 1] === text.alike[column - 1] ? lookAlike : slip
}

/** tenths[row * width + column]: the least it costs to lay the first `row` characters so that they end at `column`. */
function fillTenths(tenths: Uint16Array, typed: Units, text: Units, whole: boolean): void {
  const width = text.length + 1
  tenths[0] = 0
  for (let column = 1; column < width; column++) {
    const price = whole && text.folded[column - 1] !== open ? slip : 0
    tenths[column] = whole ? tenths[column - 1]! + price : 0
  }
  for (let row = 1; row <= typed.length; row++) {
    const here = row * width
    const above = here - width
    const before = row > 1 ? typed.alike[row - 2]! : -1
    tenths[here] = row * slip
    for (let column = 1; column < width; column++) {
      const left = tenths[here + column - 1]!
      const up = tenths[above + column]!
      if (whole && text.folded[column - 1] === open) {
        tenths[here + column] = Math.min(left, up)
        continue
      }
      const across = tenths[above + column - 1]! + stepTenths(typed, row, text, column)
      let least = Math.min(across, left + slip, up + slip)
      if (
        before === text.alike[column - 1] &&
        column > 1 &&
        typed.alike[row - 1] === text.alike[column - 2]
      ) {
        least = Math.min(least, tenths[above - width + column - 2]! + slip)
      }
      tenths[here + column] = least
    }
  }
}

function traceBack(tenths: Uint16Array, typed: Units, text: Units, whole: boolean, end: number) {
  const width = text.length + 1
  const taken: number[] = []
  let row = typed.length
  let column = end
  while (row > 0 && column > 0) {
    const at = row * width + column
    const cost = tenths[at]!
    const step = stepTenths(typed, row, text, column)
    if (whole && text.folded[column - 1] === open) {
      if (cost === tenths[at - width]) row--
      else taken.push(--column)
    } else if (cost === tenths[at - width - 1]! + step) {
      row--
      column--
      if (step < slip) taken.push(column)
    } else if (cost === tenths[at - width]! + slip) row--
    else if (cost === tenths[at - 1]! + slip) column--
    else {
      taken.push(column - 1, column - 2)
      row -= 2
      column -= 2
    }
  }
  return { start: column, taken: taken.reverse() }
}
