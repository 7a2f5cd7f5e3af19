import Papa from 'papaparse'
import { failure, type Result, success } from '@/lib/core/result'

export const separators = { comma: ',', semicolon: ';', tab: '\t', bar: '|' } as const
export type Separator = keyof typeof separators

/** One row of a file: its number as a spreadsheet counts it, and its cells, trimmed. */
export type TableRow = { row: number; cells: string[] }

export type Table = {
  separator: Separator
  /** What stands above the columns; a column without a name is called by its number. */
  head: string[]
  rows: TableRow[]
  /** What is odd about the file as a whole: sentences. */
  oddities: string[]
}

/** The most rows, and the most columns, that are read. */
export const mostRows = 200_000
const mostColumns = 200

/**
 * Reads a file's text as a table (RFC 4180, with the separators that are met). The first row that is not empty is the
 * head.
 *
 * @param separator chosen by the person; guessed when left out
 * @returns a problem when there is no row below the head, or more than can be read
 */
export function readTable(text: string, separator?: Separator): Result<Table> {
  const { data, errors, meta } = Papa.parse<string[]>(text, {
    delimiter: separator === undefined ? '' : separators[separator],
    delimitersToGuess: Object.values(separators),
    preview: mostRows + 2,
  })
  const rows = data.flatMap((cells, at): TableRow[] =>
    cells.some((cell) => cell.trim() !== '')
      ? [{ row: at + 1, cells: cells.map((cell) => cell.trim()) }]
      : [],
  )
  const [first, ...below] = rows
  if (first === undefined)
    return failure('empty-file', 'The file is empty. Choose the file that holds the ratings.')
  if (below.length === 0)
    return failure(
      'no-rows',
      'The file has one line only. The first line names the columns; the ratings stand below it.',
    )
  if (below.length > mostRows)
    return failure('too-many-rows', `The file has more than ${mostRows} rows. Split it in two.`)
  const width = Math.max(...firstOf(rows, 1000).map(({ cells }) => cells.length))
  if (width > mostColumns)
    return failure('too-many-columns', `The file has ${width} columns. Is another separator meant?`)
  const found = Object.entries(separators).find(([, sign]) => sign === meta.delimiter)?.[0]
  return success({
    separator: separator ?? (found as Separator | undefined) ?? 'comma',
    head: Array.from({ length: width }, (_, at) => first.cells[at] || `Column ${at + 1}`),
    rows: below,
    oddities: odditiesOf(text, width, errors),
  })
}

const firstOf = <Item>(items: readonly Item[], count: number): readonly Item[] => items.slice(0, count)

function odditiesOf(text: string, width: number, errors: readonly Papa.ParseError[]): string[] {
  const quote = errors.find(({ type }) => type === 'Quotes')
  return [
    ...(text.includes('\uFFFD')
      ? ['Some letters can’t be read in this encoding (�). Choose the one in which the file was saved.']
      : []),
    ...(quote === undefined
      ? []
      : [
          `A quotation mark in row ${(quote.row ?? 0) + 1} is opened and not closed as it should be: rows may have run together there. Look at the file.`,
        ]),
    ...(width === 1
      ? ['The file has one column only. Is another separator meant, or another encoding?']
      : []),
  ]
}
