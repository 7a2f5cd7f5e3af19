/**
 * Characters of the standard fonts of PDF beyond ISO 8859-1, at the codes 128 to 159 (WinAnsiEncoding, ISO 32000-1,
 * Annex D.2); the codes that are not assigned are left out.
 */
const beyondLatin1 = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ'

/** What stands for characters that those fonts do not have and that the product’s own words use. */
const insteadOf: Readonly<Record<string, string>> = {
  '−': '–',
  '\u2009': ' ',
  '\u202f': ' ',
  '\u00ad': '',
}

/** In place of a character that cannot be printed. */
export const unprintable = '¿'

const isPrintable = (character: string): boolean =>
  /^[\u0020-\u007e\u00a0-\u00ff]$/.test(character) || beyondLatin1.includes(character)

/**
 * A text in the characters of the standard fonts of PDF. Letters with a mark that those do not have lose the mark;
 * anything else becomes an upside-down question mark, so that nobody takes a changed name or number for the true one.
 * @example printable('Škoda 12 − 3') // 'Škoda 12 – 3'
 */
export const printable = (text: string): string =>
  [...text.normalize('NFC')].map((character) => printableOf(character)).join('')

function printableOf(character: string): string {
  if (isPrintable(character)) return character
  const instead = insteadOf[character]
  if (instead !== undefined) return instead
  const bare = character.normalize('NFD').replace(/\p{Mark}/gu, '')
  return bare !== '' && [...bare].every(isPrintable) ? bare : unprintable
}
