import { foldWithPositions } from './normalise'

/**
 * Turns places in a folded text into stretches of the text itself, as `[start, end)` in UTF-16 units, ascending and
 * apart. Neighbouring places make one stretch, with the dashes and blanks between them.
 *
 *   matchedRanges('KZ-90', [1, 2])  // [[1, 4]]
 */
export function matchedRanges(text: string, places: Iterable<number>): [start: number, end: number][] {
  const { starts, ends } = foldWithPositions(text)
  const ranges: [start: number, end: number][] = []
  let before = Number.NaN
  for (const place of [...new Set(places)].sort((one, other) => one - other)) {
    const last = ranges.at(-1)
    const start = starts[place]!
    if (last && (place === before + 1 || start < last[1])) last[1] = ends[place]!
    else ranges.push([start, ends[place]!])
    before = place
  }
  return ranges
}
