import { metresOf } from '@/lib/catalogue/units'
import {
  type PressureText,
  type PressureUnit,
  readPressureText,
  readRatingText,
  toleranceWarnings,
} from '@/lib/core/pressure'
import { failure, type Result, success } from '@/lib/core/result'
import type { Action, LimitKind, Sense } from '@/lib/core/vocabulary'
import type { ReportBody } from '../kinds/report'
import { type Backing, backingOf } from './backing'
import { type ColumnField, type Columns, unitIn, unitInHead } from './columns'
import { type DateOrder, readDay } from './dates'
import { type DecimalSign, withPoints } from './decimals'
import { isFormula } from './formula'
import type { Table, TableRow } from './readTable'

/** How a file is to be read, as the person left or chose it. */
export type Reading = {
  columns: Columns
  decimals: DecimalSign
  dates: DateOrder
  /** The unit of numbers that state none; empty until somebody says so. */
  unit: PressureUnit | ''
  /** The position of rows that name none; empty: they are refused. */
  position: string
}

/** A row by its fields. */
export type OldRow = { row: number; cells: Partial<Record<ColumnField, string>> }

/** One number of a row, read. */
export type OldValue = Pick<
  ReportBody,
  | 'asWritten'
  | 'action'
  | 'limit'
  | 'pascals'
  | 'sense'
  | 'toleranceAbove'
  | 'toleranceBelow'
  | 'unit'
  | 'decimals'
> & { warnings: PressureText['warnings'] }

/** A row as far as it says something by itself: its numbers, what they rest on, and which furnaces they hold for. */
export type ReadRow = {
  values: OldValue[]
  backing: Backing
  coverage: Pick<ReportBody, 'revisionRange' | 'serialRange' | 'elevationBand'>
  partNumber?: string
  note?: string
}

export const fieldsOf = ({ row, cells }: TableRow, columns: Columns): OldRow => ({
  row,
  cells: Object.fromEntries(
    Object.entries(columns).flatMap(([field, at]) => {
      const cell = at === undefined ? '' : (cells[at] ?? '')
      return cell === '' ? [] : [[field, cell]]
    }),
  ),
})

/** The units that the heads of a table name, by the fields that they stand above. */
export const unitsInHeads = ({ head }: Table, columns: Columns): Partial<Record<ColumnField, PressureUnit>> =>
  Object.fromEntries(
    (['make', 'break', 'rating', 'tolerance'] as const).flatMap((field) => {
      const at = columns[field]
      const unit = at === undefined ? undefined : unitInHead(head[at] ?? '')
      return unit === undefined ? [] : [[field, unit]]
    }),
  )

/**
 * Reads a row. What it leaves open is kept as not stated and never filled in.
 *
 * @param now the day, ISO 8601: nothing was said after it
 * @returns a problem that says what of the row can't be read
 */
export function readRow(
  row: OldRow,
  reading: Reading,
  headUnits: Partial<Record<ColumnField, PressureUnit>>,
  now: string,
): Result<ReadRow> {
  for (const [field, cell] of Object.entries(row.cells)) {
    if (isFormula(cell, field as ColumnField))
      return failure(
        'formula',
        `“${cell}” is a formula of a spreadsheet, and not what somebody wrote down. Put in its place what it stands for.`,
      )
  }
  const values = readValues(row, reading, headUnits)
  if (!values.ok) return values
  const day = row.cells.date === undefined ? undefined : readDay(row.cells.date, reading.dates)
  if (day !== undefined && 'why' in day) return failure('date', day.why)
  if (day !== undefined && day.day > now.slice(0, 10))
    return failure('date', `${day.day} lies ahead. Look at the date.`)
  const coverage = readCoverage(row, reading)
  if (!coverage.ok) return coverage
  const { partNumber, note } = row.cells
  const backing = backingOf(row, day?.day)
  const notes = [note, backing.remark].filter((text) => text !== undefined).join('\n')
  return success({
    values: values.value,
    backing,
    coverage: coverage.value,
    ...(partNumber === undefined ? {} : { partNumber }),
    ...(notes === '' ? {} : { note: notes }),
  })
}

const said: readonly (readonly ['make' | 'break' | 'rating', Action | undefined])[] = [
  ['make', 'closes'],
  ['break', 'opens'],
  ['rating', undefined],
]

function readValues(
  row: OldRow,
  reading: Reading,
  headUnits: Partial<Record<ColumnField, PressureUnit>>,
): Result<OldValue[]> {
  const values: OldValue[] = []
  for (const [field, action] of said) {
    const cell = row.cells[field]
    if (cell === undefined) continue
    const read = readCell(cell, action, row, reading, headUnits[field])
    if (!read.ok) return read
    for (const value of read.value) {
      const whole = withTolerance(value, row, reading, headUnits.tolerance)
      if (!whole.ok) return whole
      values.push(whole.value)
    }
  }
  return values.length > 0
    ? success(values)
    : failure('no-number', 'The row has no make point, break point or rating.')
}

/** A number with the tolerance of its row’s own column; one that stands beside the number itself is nearer, and stays. */
function withTolerance(
  value: OldValue,
  { cells }: OldRow,
  { decimals }: Reading,
  headUnit: PressureUnit | undefined,
): Result<OldValue> {
  const cell = cells.tolerance
  if (cell === undefined || value.toleranceAbove !== undefined || value.toleranceBelow !== undefined)
    return success(value)
  const number = cell.replace(/^(?:±|\+\s*\/?\s*[-−]|\+)\s*/, '')
  const read = /^[-−]/.test(number)
    ? undefined
    : readPressureText(withPoints(number, decimals), { ownUnit: headUnit ?? value.unit })
  if (read === undefined || !read.ok || read.value.toleranceAbove !== undefined)
    return failure(
      'tolerance',
      `“${cell}” is no tolerance that can be read. Write how far it may be off either way, for instance 0.05.`,
    )
  const { pascals } = read.value
  return success({
    ...value,
    asWritten: oneLine(`${value.asWritten} ± ${number}`),
    toleranceAbove: pascals,
    toleranceBelow: pascals,
    warnings: [
      ...value.warnings,
      ...toleranceWarnings({ ...value, toleranceAbove: pascals, toleranceBelow: pascals }, false),
    ],
  })
}

/** What a row says of a number in words: nothing is decoded that can mean two things. */
const actionIn = (text = ''): Action =>
  /clos|^make/i.test(text) ? 'closes' : /open|^break/i.test(text) ? 'opens' : 'not stated'
const senseIn = (text = ''): Sense =>
  /suction|neg|vac|draft|^[-−]$/i.test(text)
    ? 'suction'
    : /pos|pressure|^\+$/i.test(text)
      ? 'pressure'
      : 'not stated'

function readCell(
  cell: string,
  columnAction: Action | undefined,
  { cells }: OldRow,
  { decimals, unit }: Reading,
  headUnit: PressureUnit | undefined,
): Result<OldValue[]> {
  const named = cells.unit === undefined ? undefined : unitIn(cells.unit)
  if (cells.unit !== undefined && named === undefined)
    return failure('unit', `“${cells.unit}” is no unit of pressure known here. Write in. w.c., Pa or mbar.`)
  const ownUnit = named ?? headUnit ?? (unit === '' ? undefined : unit)
  const read = readRatingText(withPoints(cell, decimals), ownUnit === undefined ? {} : { ownUnit })
  if (!read.ok) return failure(read.problem.code, `“${cell}”: ${read.problem.message}`)
  const [first, second] = read.value
  if (
    columnAction !== undefined &&
    (second !== undefined || (first?.action ?? columnAction) !== columnAction)
  )
    return failure(
      'action',
      `“${cell}” stands in the column of what it ${columnAction} at, and says something else. Put it in the column of its own words.`,
    )
  if (ownUnit === undefined && read.value.some(({ unitStated }) => !unitStated))
    return failure('unit', `“${cell}” states no unit, and neither does its column. Choose the unit.`)
  return success(
    read.value.map((value) => ({
      asWritten: oneLine(cells.unit === undefined ? cell : `${cell} ${cells.unit}`),
      action: value.action ?? columnAction ?? actionIn(cells.action),
      limit: value.limit ?? limitIn(cells.action),
      pascals: value.pascals,
      sense: value.sense === 'not stated' ? senseIn(cells.sense) : value.sense,
      ...(value.toleranceAbove === undefined ? {} : { toleranceAbove: value.toleranceAbove }),
      ...(value.toleranceBelow === undefined ? {} : { toleranceBelow: value.toleranceBelow }),
      unit: value.unit,
      decimals: Math.min(value.decimals, 6),
      warnings: value.warnings,
    })),
  )
}

const limitIn = (text = ''): LimitKind =>
  /\bmax/i.test(text) ? 'maximum' : /\bmin/i.test(text) ? 'minimum' : 'nominal'

/** A cell may hold line ends and other signs that no label has. */
const oneLine = (text: string): string => text.replaceAll(/[\p{Cc}\s]+/gu, ' ').trim()

/** A height above sea level with its unit, in metres. */
function metresIn(text: string, decimals: DecimalSign): number | undefined {
  const [, number = '', unit = ''] =
    /^([-−]?[\d.,]+)\s*(ft|feet|foot|'|m|metres?|meters?)\.?$/i.exec(text) ?? []
  const value = Number(withPoints(number.replace('−', '-'), decimals === 'comma' ? 'comma' : 'point'))
  if (number === '' || !Number.isFinite(value)) return undefined
  return Math.round(/^m/i.test(unit) ? value : metresOf(value))
}

function readCoverage({ cells }: OldRow, { decimals }: Reading): Result<ReadRow['coverage']> {
  const all = /^\s*(all|every|any)\b/i.test(cells.holdsFor ?? '')
  const ends = (from: string | undefined, to: string | undefined) =>
    from === undefined && to === undefined
      ? undefined
      : { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) }
  const heights: { fromMetres?: number; toMetres?: number } = {}
  for (const [field, key] of [
    ['elevationFrom', 'fromMetres'],
    ['elevationTo', 'toMetres'],
  ] as const) {
    const text = cells[field]
    if (text === undefined) continue
    const metres = metresIn(text, decimals)
    if (metres === undefined)
      return failure('elevation', `“${text}” is no elevation. Write it with ft or m, for instance 4500 ft.`)
    heights[key] = metres
  }
  const revisions = ends(cells.revisionFrom, cells.revisionTo)
  const serials = ends(cells.serialFrom, cells.serialTo)
  const stated = all || revisions !== undefined || serials !== undefined || Object.keys(heights).length > 0
  // A source that states one range says by that what it holds for; one that states none says nothing.
  return success(
    stated ? { revisionRange: revisions ?? {}, serialRange: serials ?? {}, elevationBand: heights } : {},
  )
}
