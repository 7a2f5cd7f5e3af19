import { v7 as uuidv7 } from 'uuid'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import {
  type Answers,
  guessColumns,
  guessDateOrder,
  guessDecimals,
  noAnswers,
  type Plan,
  planImport,
  type Reading,
  readTable,
  type Separator,
  type Table,
} from '@/lib/records/oldList'
import { recordKinds } from '@/lib/records/registry'

export const now = '2026-01-12T12:00:00.000Z'
export const me = 'person-1'

let seq = 0
export const held = (
  kind: string,
  body: Record<string, unknown>,
  { id = uuidv7(), author = me }: { id?: string; author?: string } = {},
): HeldRecord => {
  seq += 1
  return {
    id,
    kind,
    version: recordKinds[kind]!.version,
    body,
    saidAt: '2026-01-10T08:00:00.000Z',
    author,
    device: 'desk-1',
    seq,
    receivedAt: '2026-01-10T08:00:01.000Z',
    clockShiftMs: 0,
  }
}

/** An invented maker with a range of two positions. */
export function someEquipment() {
  const maker = held('maker', { name: 'Orrinmoor' })
  const range = held('equipment range', {
    makerId: maker.id,
    name: 'OM Ridge',
    modelPatterns: ['OMR-80*', 'OMR-1??'],
    fuel: 'natural gas',
    heat: 'condensing',
  })
  const at = { kind: 'one-port', between: 'port and room', tap: 'collector box', sense: 'suction' }
  const low = held('position', { rangeId: range.id, name: 'Low fire', stage: 'low fire', ...at })
  const high = held('position', { rangeId: range.id, name: 'High fire', stage: 'high fire', ...at })
  const generic = held('part', {
    partNumber: 'UNI-22',
    class: 'general-purpose',
    fieldAdjustable: true,
    positionIds: [],
  })
  return { maker, range, low, high, generic, all: [maker, range, low, high, generic] }
}

export function tableOf(text: string, separator?: Separator): Table {
  const read = readTable(text, separator)
  if (!read.ok) throw new Error(read.problem.message)
  return read.value
}

export function readingOf(table: Table, parts: Partial<Reading> = {}): Reading {
  const columns = guessColumns(table)
  const cells = (field: keyof typeof columns) =>
    columns[field] === undefined ? [] : table.rows.map((row) => row.cells[columns[field]!] ?? '')
  return {
    columns,
    decimals: guessDecimals([...cells('make'), ...cells('break'), ...cells('rating')]),
    dates: guessDateOrder(cells('date')),
    unit: '',
    position: '',
    ...parts,
  }
}

type Given = {
  file?: TeamFile
  answers?: Answers
  takeOdd?: boolean
  reading?: Partial<Reading>
  separator?: Separator
}

/** Judges a list, and says how many steps that took. */
export function planOf(text: string, given: Given = {}): Plan & { steps: number } {
  const { file = foldTeamFile(someEquipment().all), answers = noAnswers, takeOdd = false } = given
  const table = tableOf(text, given.separator)
  const reading = readingOf(table, given.reading)
  const work = planImport({
    table,
    reading,
    answers,
    takeOdd,
    file,
    me,
    now,
    fileName: 'old ratings.csv',
    newId: uuidv7,
  })
  let steps = 0
  for (;;) {
    const { value, done } = work.next()
    if (done) return { ...value, steps }
    steps += 1
  }
}
