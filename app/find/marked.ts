/** A piece of a text, and whether it is part of what was looked for. */
export type Piece = { text: string; found: boolean; at: number }

/**
 * Cuts a text where a match begins and ends.
 * @param matched pairs of [start, end), in order, not overlapping
 * @example marked('OM-7731', [[3, 7]]) // [{ text: 'OM-', … }, { text: '7731', found: true, … }]
 */
export function marked(text: string, matched: readonly (readonly [number, number])[]): Piece[] {
  const pieces: Piece[] = []
  let from = 0
  for (const [start, end] of matched) {
    if (start > from) pieces.push({ text: text.slice(from, start), found: false, at: from })
    pieces.push({ text: text.slice(start, end), found: true, at: start })
    from = end
  }
  if (from < text.length) pieces.push({ text: text.slice(from), found: false, at: from })
  return pieces
}
