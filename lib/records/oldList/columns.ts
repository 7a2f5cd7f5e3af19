import type { PressureUnit } from '@/lib/core/pressure'
import { readPressureText } from '@/lib/core/pressure'
import type { Table } from './readTable'

/** What a column of an old list can hold, in the order in which it is offered. */
export const columnFields = [
  'maker',
  'range',
  'model',
  'position',
  'make',
  'break',
  'rating',
  'tolerance',
  'action',
  'unit',
  'sense',
  'source',
  'date',
  'document',
  'page',
  'edition',
  'organisation',
  'reference',
  'saidBy',
  'partNumber',
  'switchType',
  'holdsFor',
  'revisionFrom',
  'revisionTo',
  'serialFrom',
  'serialTo',
  'elevationFrom',
  'elevationTo',
  'note',
] as const

export type ColumnField = (typeof columnFields)[number]

/** Which column holds what, by its place from 0. A column that nothing names is not read. */
export type Columns = Partial<Record<ColumnField, number>>

export const columnWords: Readonly<Record<ColumnField, string>> = {
  maker: 'Maker',
  range: 'Furnace range',
  model: 'Model number',
  position: 'Switch position',
  make: 'Make point (closes at)',
  break: 'Break point (opens at)',
  rating: 'Rating, as written',
  tolerance: 'Tolerance (±), in the row’s unit',
  action: 'Closes or opens',
  unit: 'Unit',
  sense: 'Suction or pressure',
  source: 'Source',
  date: 'Day on which the source said it',
  document: 'Document',
  page: 'Page',
  edition: 'Edition',
  organisation: 'Who was rung',
  reference: 'Reference of the call',
  saidBy: 'Who said it',
  partNumber: 'Part number',
  switchType: 'Kind of switch, in words',
  holdsFor: 'Which furnaces it holds for',
  revisionFrom: 'Revision from',
  revisionTo: 'Revision to',
  serialFrom: 'Serial from',
  serialTo: 'Serial to',
  elevationFrom: 'Elevation from',
  elevationTo: 'Elevation to',
  note: 'Note',
}

/** Words by which a head is known. The first that fits counts, so the narrower ones come first. */
const headWords: readonly (readonly [ColumnField, RegExp])[] = [
  ['revisionFrom', /rev\w*.*(from|first|start|min)/],
  ['revisionTo', /rev\w*.*(to|last|end|max|until)\b/],
  ['serialFrom', /serial.*(from|first|start|min)/],
  ['serialTo', /serial.*(to|last|end|max|until)\b/],
  ['elevationFrom', /(elev\w*|altitude).*(from|above|min|low)/],
  ['elevationTo', /(elev\w*|altitude).*(to\b|below|up|max|high)/],
  ['holdsFor', /(holds|applies|valid) ?(for|to)|covers/],
  ['partNumber', /part ?(no|nr|num\w*|#)|^part$|^p\/?n$/],
  ['page', /^page|^p\.$|page ?(no|number)/],
  ['edition', /edition|issue/],
  ['document', /document|manual|bulletin|literature|publication/],
  ['reference', /reference|ticket|call ?(no|number)|^ref\b/],
  ['organisation', /who (was )?(rung|called)|organi[sz]ation|company|called/],
  ['saidBy', /said ?by|who said|contact|told by|person/],
  ['switchType', /(switch|part) ?(type|kind)|kind of switch|^type$/],
  ['source', /source|origin|where from|rests on/],
  ['date', /date|^day|when|year/],
  ['tolerance', /^(?:\S+ )?tol(?:erance)?s?\b|^±|^\+ ?\/? ?[-−](?!\w)/],
  ['make', /\bmake\b|clos(e|es|ing)\b|\bon at\b|cut.?in/],
  ['break', /\bbreak\b|open(s|ing)?\b|\boff at\b|cut.?out/],
  ['action', /action|closes or opens|contact/],
  ['unit', /^units?\b|unit of/],
  ['sense', /sense|sign|suction|neg\w*\/pos\w*/],
  ['rating', /rating|set ?point|setting|pressure|value|in\.? ?w\.?c/],
  ['position', /position|stage|^switch$|which switch/],
  ['model', /model/],
  ['range', /range|series|family|line/],
  ['maker', /maker|manufacturer|brand|make[r]?$/],
  ['note', /note|remark|comment/],
]

/** How many rows are looked at to see what a column holds. */
const sampled = 200

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[_\s]+/g, ' ')
    .trim()

/**
 * Which column most likely holds what: by the words above it, and by what stands in it. “Make” above names of makers is
 * the maker, and above numbers the make point. No column is given to two fields.
 *
 * @example guessColumns(table) // { maker: 0, model: 1, make: 4 }
 */
export function guessColumns({ head, rows }: Pick<Table, 'head' | 'rows'>): Columns {
  const columns: Columns = {}
  const taken = new Set<number>()
  const numeric = head.map((_, at) =>
    mostlyNumbers(rows.slice(0, sampled).map(({ cells }) => cells[at] ?? '')),
  )
  const give = (field: ColumnField, at: number): void => {
    columns[field] = at
    taken.add(at)
  }
  for (const [field, pattern] of headWords) {
    const at = head.findIndex(
      (name, place) => !taken.has(place) && pattern.test(plain(name)) && mayHold(field, numeric[place]!),
    )
    if (at >= 0) give(field, at)
  }
  if (columns.maker === undefined) {
    const at = head.findIndex((name, place) => !taken.has(place) && plain(name) === 'make' && !numeric[place])
    if (at >= 0) give('maker', at)
  }
  if (columns.make === undefined && columns.break === undefined && columns.rating === undefined) {
    const at = head.findIndex((_, place) => !taken.has(place) && numeric[place])
    if (at >= 0) give('rating', at)
  }
  return columns
}

const mayHold = (field: ColumnField, isNumeric: boolean): boolean =>
  field === 'make' || field === 'break'
    ? isNumeric
    : field === 'maker' || field === 'unit'
      ? !isNumeric
      : true

/** A number with its sign, unit and tolerance, and hardly anything else. */
const numberCell = /^[-+−<>≤≥~\s]*[.,]?\d[\d.,]*\s*(?:[±+-][\s\d.,]*)?["'a-z.\s]{0,16}$/i

function mostlyNumbers(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '')
  return filled.length > 0 && filled.filter((cell) => numberCell.test(cell)).length > filled.length * 0.6
}

/** The unit that the head of a column names, “Make (in. w.c.)”; undefined when it names none. */
export function unitInHead(name: string): PressureUnit | undefined {
  const behind = /[([](.+)[)\]]|,\s*(.+)$/.exec(name)
  return unitIn(behind?.[1] ?? behind?.[2] ?? name.split(/\s+/).slice(1).join(' '))
}

/** The unit that a text names and nothing else; undefined when it names none. */
export function unitIn(text: string): PressureUnit | undefined {
  if (text.trim() === '') return undefined
  const read = readPressureText(`1 ${text}`)
  return read.ok && read.value.unitStated ? read.value.unit : undefined
}
