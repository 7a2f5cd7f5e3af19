import type { PressureUnit } from '@/lib/core/pressure'
import { failure, type Result } from '@/lib/core/result'
import {
  type Answers,
  type ColumnField,
  type Columns,
  type DateOrder,
  type DecimalSign,
  decode,
  type Encoding,
  fieldsOf,
  guessColumns,
  guessDateOrder,
  guessDecimals,
  guessEncoding,
  isWorkbook,
  noAnswers,
  type Reading,
  readTable,
  type Separator,
  type Table,
} from '@/lib/records/oldList'

/** A chosen file, as it is kept on the device until the import is done or given up. */
export type ChosenFile = { name: string; bytes: Uint8Array; sha256: string }

/** What a person chose beside what was guessed. Empty: as guessed. */
export type ImportChoices = {
  encoding: Encoding | ''
  separator: Separator | ''
  columns: Columns | undefined
  decimals: DecimalSign | ''
  dates: DateOrder | ''
  unit: PressureUnit | ''
  position: string
  answers: Answers
  takeOdd: boolean
}

export const freshChoices: ImportChoices = {
  encoding: '',
  separator: '',
  columns: undefined,
  decimals: '',
  dates: '',
  unit: '',
  position: '',
  answers: noAnswers,
  takeOdd: false,
}

/** The longest file that is read, in bytes: 50,000 rows have a tenth of it. */
export const mostFileBytes = 50 * 1024 * 1024

/** A file with how it is read: what was chosen, and what was guessed where nothing was. */
export type ReadFile = { encoding: Encoding; table: Table; reading: Reading }

export function readFile(file: ChosenFile, choices: ImportChoices): Result<ReadFile> {
  if (isWorkbook(file.bytes))
    return failure('workbook', 'This is a workbook. Save it as CSV, then choose that file.')
  const encoding = choices.encoding || guessEncoding(file.bytes)
  const read = readTable(decode(file.bytes, encoding), choices.separator || undefined)
  if (!read.ok) return read
  const table = read.value
  const columns = choices.columns ?? guessColumns(table)
  const cells = (...fields: ColumnField[]): string[] =>
    fields.flatMap((field) => {
      const at = columns[field]
      return at === undefined ? [] : table.rows.map((row) => row.cells[at] ?? '')
    })
  const reading: Reading = {
    columns,
    decimals: choices.decimals || guessDecimals(cells('make', 'break', 'rating', 'tolerance')),
    dates: choices.dates || guessDateOrder(cells('date')),
    unit: choices.unit,
    position: choices.position.trim(),
  }
  return { ok: true, value: { encoding, table, reading } }
}

/** The names of columns that hold something and are mapped to nothing: what of the list is left behind. */
export const columnsNotRead = ({ table, reading }: ReadFile): string[] =>
  table.head.filter(
    (_, at) =>
      !Object.values(reading.columns).includes(at) &&
      table.rows.some(({ cells }) => (cells[at] ?? '') !== ''),
  )

/** What is missing before a list can be judged: sentences. */
export function stillMissing({ table, reading }: ReadFile): string[] {
  const { columns } = reading
  const has = (...fields: ColumnField[]) => fields.some((field) => columns[field] !== undefined)
  const rows = table.rows.slice(0, 200).map((row) => fieldsOf(row, columns))
  return [
    ...(has('maker') ? [] : ['Say which column names the maker.']),
    ...(has('range', 'model') ? [] : ['Say which column names the furnace range or the model.']),
    ...(has('make', 'break', 'rating')
      ? []
      : ['Say which column has the make point, the break point or the rating.']),
    ...(has('position') || reading.position !== '' || rows.length === 0
      ? []
      : ['Say which column names the switch position, or of which position all rows are.']),
  ]
}
