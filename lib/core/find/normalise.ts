/** The sign that stands for any run of characters in a printed model number, as in `XY80*12`. */
export const wildcard = '*'

/** The folded form of a text, and where each folded character stands in the text itself. */
export type Folded = {
  folded: string
  /** Per character of `folded`: where its original begins and ends (not included), in UTF-16 units of the text. */
  starts: number[]
  ends: number[]
}

// Letters that Unicode does not take apart into a base letter and a mark.
const wholeLetters: Readonly<Record<string, string>> = { Ø: 'O', Æ: 'AE', Œ: 'OE', Ł: 'L', Đ: 'D', Ħ: 'H' }

const letterOrDigit = /[\p{L}\p{N}]/u
const mark = /^\p{M}$/u
const notPlain = /[^0-9A-Z*]/
const ascii = /^[\0-\x7f]*$/
const asciiSigns = /[^0-9A-Z*]+/g

function foldCharacter(character: string): string {
  let folded = ''
  for (const part of character.normalize('NFKD').toUpperCase()) {
    if (letterOrDigit.test(part) || part === wildcard) folded += wholeLetters[part] ?? part
  }
  return folded
}

/**
 * A text as it is compared: capitals and digits without dashes, blanks, punctuation and accents; full-width and
 * other compatibility forms made plain (Unicode Standard Annex #15, NFKD). The wildcard `*` is kept. A text without
 * a letter or digit gives '' or wildcards alone.
 *
 *   fold('kz-90 4b')  // 'KZ904B'
 */
export function fold(text: string): string {
  if (ascii.test(text)) {
    const capitals = text.toUpperCase()
    return notPlain.test(capitals) ? capitals.replace(asciiSigns, '') : capitals
  }
  let folded = ''
  for (const character of text) folded += foldCharacter(character)
  return folded
}

/** `fold`, remembering positions. A mark that follows a letter belongs to that letter. */
export function foldWithPositions(text: string): Folded {
  const starts: number[] = []
  const ends: number[] = []
  let folded = ''
  let at = 0
  for (const character of text) {
    const end = at + character.length
    const parts = foldCharacter(character)
    if (parts === '' && ends.at(-1) === at && mark.test(character)) ends[ends.length - 1] = end
    for (let unit = 0; unit < parts.length; unit++) {
      starts.push(at)
      ends.push(end)
    }
    folded += parts
    at = end
  }
  return { folded, starts, ends }
}
