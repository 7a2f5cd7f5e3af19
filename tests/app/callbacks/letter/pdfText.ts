import { inflateSync } from 'node:zlib'

/** The codes 128 to 159 of WinAnsiEncoding (ISO 32000-1, Annex D.2), written out apart from the product’s own table. */
const from128 = [
  '€',
  '',
  '‚',
  'ƒ',
  '„',
  '…',
  '†',
  '‡',
  'ˆ',
  '‰',
  'Š',
  '‹',
  'Œ',
  '',
  'Ž',
  '',
  '',
  '‘',
  '’',
  '“',
  '”',
  '•',
  '–',
  '—',
  '˜',
  '™',
  'š',
  '›',
  'œ',
  '',
  'ž',
  'Ÿ',
]

const characterOf = (code: number): string =>
  code >= 128 && code < 160 ? (from128[code - 128] ?? '') : String.fromCharCode(code)

/** What a PDF of simple fonts shows, compressed or not, without its blanks: lines break where they like. */
export function pdfText(pdf: Uint8Array): string {
  const source = streamsOf(pdf).join('\n')
  const shown = [...source.matchAll(/\[((?:<[0-9a-f]*>|[\s\d.-])+)\] TJ/g)].map(([, pieces = '']) =>
    [...pieces.matchAll(/<([0-9a-f]*)>/g)]
      .flatMap(([, hex = '']) => hex.match(/../g) ?? [])
      .map((pair) => characterOf(Number.parseInt(pair, 16)))
      .join(''),
  )
  return withoutBlanks(shown.join(''))
}

function streamsOf(pdf: Uint8Array): string[] {
  const whole = Buffer.from(pdf).toString('latin1')
  return [...whole.matchAll(/<<([^>]*)>>\s*stream\r?\n([\s\S]*?)\r?\nendstream/g)].map(
    ([, dictionary = '', bytes = '']) =>
      dictionary.includes('/FlateDecode')
        ? inflateSync(Buffer.from(bytes, 'latin1')).toString('latin1')
        : bytes,
  )
}

export const withoutBlanks = (text: string): string => text.replace(/\s/g, '')

/** How many pages a PDF has. */
export const pagesOf = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b(?!s)/g)?.length ?? 0
