/** What a key of the number pad does. */
export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | 'point' | 'minus' | 'back'

/** A text and the selection in it, `start` to `end`; equal when nothing is selected. */
export type Typed = { text: string; start: number; end: number }

/**
 * The text after a key of the number pad was pressed, and where the caret then stands. A digit or the point replaces
 * the selection; the minus puts a minus in front or takes it away, wherever the caret is; back deletes the
 * selection, else the character before the caret. A second point is ignored.
 * Example: pressKey({ text: '0.5', start: 3, end: 3 }, '8') is { text: '0.58', start: 4, end: 4 }.
 */
export function pressKey({ text, start, end }: Typed, key: PadKey): Typed {
  if (key === 'minus') {
    const shift = text.startsWith('-') ? -1 : 1
    const moved = (at: number) => Math.max(0, at + shift)
    return { text: shift > 0 ? `-${text}` : text.slice(1), start: moved(start), end: moved(end) }
  }
  if (key === 'back') {
    const from = start === end ? Math.max(0, start - 1) : start
    return { text: text.slice(0, from) + text.slice(end), start: from, end: from }
  }
  const kept = text.slice(0, start) + text.slice(end)
  if (key === 'point' && /[.,]/.test(kept)) return { text, start, end }
  const added = key === 'point' ? '.' : key
  const caret = start + 1
  return { text: text.slice(0, start) + added + text.slice(end), start: caret, end: caret }
}
