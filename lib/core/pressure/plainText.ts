/** Ruler fractions that have a character of their own. */
const fractionCharacters: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

const replacements: readonly (readonly [RegExp, string | ((found: string) => string)])[] = [
  // Full-width forms are the ASCII characters shifted by a fixed distance (Unicode, block FF00–FFEF).
  [/[\uff01-\uff5e]/g, (found) => String.fromCharCode(found.charCodeAt(0) - 0xfee0)],
  [/\r\n|[\r\n\v\f\u0085\u2028\u2029]/g, '\n'],
  // A thin space between a digit and three more is the SI's grouping of thousands; any other space parts words.
  [/(^|[^\d.,])([1-9]\d{0,2})[\u2009\u202f](\d{3})(?!\d)/g, '$1$2$3'],
  [/[½¼¾⅛⅜⅝⅞]/g, (found) => ` ${fractionCharacters[found]}`],
  [/[\u2044\u2215]/g, '/'],
  // Hyphens and the minus sign are one thing to a label printer; a dash may also part words, so it stays a dash.
  [/[\u2010-\u2012\u2212\ufe63]/g, '-'],
  [/[\u2014\u2015\ufe58]/g, '–'],
  [/[\u201c-\u201f\u2033\u2036\u3003\u02dd]|''|\u2032\u2032|\u2019\u2019/g, '"'],
  [/\u2019/g, "'"],
  [/\u2082/g, '2'],
  [/[\p{Zs}\p{Cf}\t]+/gu, ' '],
  [/ *\n[ \n]*/g, '\n'],
]

/**
 * A typed or printed text with the many characters for one thing made one: digits, minus signs, inch marks,
 * spaces, fractions. Case is kept. Compatibility normalization (NFKC) is not used, since it turns 1½ into 11⁄2
 * and 0.52² into 0.522.
 * @example plainText('−１½″') // '-1 1/2"'
 */
export function plainText(text: string): string {
  return replacements
    .reduce(
      (plain, [pattern, replacement]) =>
        typeof replacement === 'string'
          ? plain.replace(pattern, replacement)
          : plain.replace(pattern, replacement),
      text,
    )
    .trim()
}
