/** Lists of small numbers, one list per row, laid end to end in one typed array: row r is values[starts[r]…starts[r + 1]). */
export type Postings = { starts: Uint32Array; values: Uint32Array }

/**
 * Lays lists end to end. `eachPair` is called twice, to count and to fill, and must report the same pairs (row,
 * value) in the same order both times; values keep that order within their row.
 */
export function layPostings(
  rows: number,
  eachPair: (report: (row: number, value: number) => void) => void,
): Postings {
  const starts = new Uint32Array(rows + 1)
  eachPair((row) => {
    starts[row + 1]!++
  })
  for (let row = 0; row < rows; row++) starts[row + 1]! += starts[row]!
  const next = starts.slice(0, rows)
  const values = new Uint32Array(starts[rows]!)
  eachPair((row, value) => {
    values[next[row]!++] = value
  })
  return { starts, values }
}

/** Visits the values of one row, in order. */
export function eachIn({ starts, values }: Postings, row: number, visit: (value: number) => void): void {
  const end = starts[row + 1]!
  for (let at = starts[row]!; at < end; at++) visit(values[at]!)
}
