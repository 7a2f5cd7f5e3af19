import { analyse } from 'chardet'

/** The encodings that a person can choose among, by their names in the Encoding Standard (WHATWG). */
export const encodings = [
  'utf-8',
  'utf-16le',
  'utf-16be',
  'windows-1252',
  'windows-1250',
  'macintosh',
] as const

export type Encoding = (typeof encodings)[number]

/** Byte order marks, which say the encoding for sure (Unicode Standard, 23.8). */
const marks: readonly (readonly [Encoding, readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
]

/**
 * How workbooks begin: as a zip archive (PKWARE APPNOTE 4.3.7) or as a compound file (MS-CFB 2.2). Neither is text.
 */
const workbookMarks: readonly (readonly number[])[] = [
  [0x50, 0x4b, 0x03, 0x04],
  [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1],
]

/** Whether a file is a workbook of a spreadsheet program and no text. */
export const isWorkbook = (bytes: Uint8Array): boolean =>
  workbookMarks.some((mark) => mark.every((byte, at) => bytes[at] === byte))

/** How much of a file is looked at to guess its encoding, in bytes. */
const lookedAt = 256 * 1024

/**
 * The encoding that a file most likely has: what its mark says; UTF-16 where every other byte is zero; UTF-8 where all
 * of it is lawful UTF-8; else what its letters look like, and windows-1252 where they say nothing.
 *
 * @example guessEncoding(new Uint8Array([0x6f, 0xb1])) // 'windows-1252': "o±" in it, and no UTF-8
 */
export function guessEncoding(bytes: Uint8Array): Encoding {
  const marked = marks.find(([, mark]) => mark.every((byte, at) => bytes[at] === byte))
  if (marked !== undefined) return marked[0]
  const head = bytes.subarray(0, lookedAt)
  const zeros = [0, 0]
  for (const [at, byte] of head.entries()) if (byte === 0) zeros[at % 2]! += 1
  const half = head.length / 2
  if (head.length > 1 && zeros[1]! > half * 0.4 && zeros[0]! < half * 0.1) return 'utf-16le'
  if (head.length > 1 && zeros[0]! > half * 0.4 && zeros[1]! < half * 0.1) return 'utf-16be'
  if (isLawfulUtf8(bytes)) return 'utf-8'
  const [first] = analyse(head)
  return first?.name === 'windows-1250' || first?.name === 'ISO-8859-2' ? 'windows-1250' : 'windows-1252'
}

function isLawfulUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return true
  } catch (cause) {
    if (cause instanceof TypeError) return false
    throw cause
  }
}

/**
 * A file as text, without its mark. Bytes that the encoding has no letter for become U+FFFD; nothing makes it throw.
 */
export const decode = (bytes: Uint8Array, encoding: Encoding): string =>
  new TextDecoder(encoding).decode(bytes)
