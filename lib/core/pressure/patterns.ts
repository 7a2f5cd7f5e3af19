/** The dot of an abbreviation, but not the decimal point of a number glued to it: `W.C.60` is W.C and .60. */
const abbreviationDot = '\\.(?!\\d+(?!\\d|[.,]\\d))'

/** That dot, or none. */
export const dot = `(?:${abbreviationDot})?`

/** Nothing that would make the word a longer one. */
export const wordEnd = '(?![\\p{L}\\p{M}])'

/** As `wordEnd`, and no digit either. */
export const codeEnd = '(?![\\p{L}\\p{M}\\p{N}])'

/** The end of a unit: the dot of an abbreviation, or no letter and no digit. */
export const unitEnd = `(?:${abbreviationDot}|${codeEnd})`

/** A pattern that matches only at the place it is told, ignoring case. */
export const here = (source: string, flags = 'iuy'): RegExp => new RegExp(source, flags)

/** What the pattern matches at a place of the text, '' where it doesn't match. */
export function matchAt(pattern: RegExp, text: string, at: number): string {
  pattern.lastIndex = at
  return pattern.exec(text)?.[0] ?? ''
}
