import { type Catalogue, type CauseStatus, type Context, causeStatuses, type NamedCause } from './catalogue'

/**
 * Past cases as bit sets and small integers, column by column, so that a ranking scans typed arrays. Bit i of a
 * set (bit i % 32 of word i / 32) belongs to case i. Made by packCases; a table is only ever written while it is
 * being made, or between two forecasts of a replay.
 */
export type CaseTable = {
  catalogue: Catalogue
  /** Ids of the cases, by place. */
  ids: readonly string[]
  /** 32-bit words of one set. */
  words: number
  /** The cases in which finding f was checked: the set that begins at f × words. */
  checked: Int32Array
  /** The cases in which finding f had its value v: the set that begins at (firstValue[f] + v) × words. */
  valued: Int32Array
  firstValue: Uint32Array
  /** The place of each case's main and contributing cause, or -1. */
  main: Int16Array
  contributing: Int16Array
  /** The place of each case's status in causeStatuses. */
  status: Uint8Array
  /** What is stated about where a case happened, field by field: the cases that state it, and which case states what. */
  contextStated: Int32Array[]
  contextPlaces: Map<string, number[]>[]
  /** The places of the catalogue's findings, by id. */
  findingPlaces: ReadonlyMap<string, number>
  /** One number a case, used anew by every measurement, because a fresh array each time would cost more than filling it. */
  workspace: Int32Array
}

/** A table in which nothing is known about any case yet. Throws RangeError when an id comes twice. */
export function emptyCaseTable(catalogue: Catalogue, ids: readonly string[]): CaseTable {
  if (new Set(ids).size !== ids.length) throw new RangeError('Two cases have the same id')
  const words = Math.ceil(ids.length / 32)
  const firstValue = new Uint32Array(catalogue.findings.length + 1)
  catalogue.findings.forEach((finding, place) => {
    firstValue[place + 1] = firstValue[place]! + finding.values.length
  })
  const fields = catalogue.context ?? []
  return {
    catalogue,
    ids,
    words,
    checked: new Int32Array(catalogue.findings.length * words),
    valued: new Int32Array(firstValue[catalogue.findings.length]! * words),
    firstValue,
    main: new Int16Array(ids.length).fill(-1),
    contributing: new Int16Array(ids.length).fill(-1),
    status: new Uint8Array(ids.length),
    contextStated: fields.map(() => new Int32Array(words)),
    contextPlaces: fields.map(() => new Map()),
    findingPlaces: new Map(catalogue.findings.map((finding, place) => [finding.id, place])),
    workspace: new Int32Array(words * 32),
  }
}

/** Writes the value of a finding; `undefined` takes it back to not checked. */
export function writeFinding(table: CaseTable, at: number, finding: number, value: number | undefined): void {
  const word = at >>> 5
  const bit = 1 << (at & 31)
  for (let set = table.firstValue[finding]!; set < table.firstValue[finding + 1]!; set++) {
    table.valued[set * table.words + word]! &= ~bit
  }
  if (value === undefined) {
    table.checked[finding * table.words + word]! &= ~bit
  } else {
    table.checked[finding * table.words + word]! |= bit
    table.valued[(table.firstValue[finding]! + value) * table.words + word]! |= bit
  }
}

/** Writes what caused a case; `undefined`, or a main cause that the catalogue does not list, leaves it without one. */
export function writeCause(
  table: CaseTable,
  at: number,
  cause: NamedCause | undefined,
  places: ReadonlyMap<string, number>,
): void {
  if (cause !== undefined && cause.main === cause.contributing) {
    throw new RangeError(`Case ${table.ids[at]}: a cause cannot contribute to itself`)
  }
  const main = cause === undefined ? -1 : (places.get(cause.main) ?? -1)
  table.main[at] = main
  table.contributing[at] =
    cause?.contributing === undefined || main < 0 ? -1 : (places.get(cause.contributing) ?? -1)
  table.status[at] = statusPlace(cause?.status ?? 'presumed')
}

function statusPlace(status: CauseStatus): number {
  const place = causeStatuses.indexOf(status)
  if (place < 0) throw new RangeError(`'${status}' is no status of a cause`)
  return place
}

/** Writes what is stated about where a case happened: once for each case. */
export function writeContext(table: CaseTable, at: number, context: Context): void {
  for (const [field, { id }] of (table.catalogue.context ?? []).entries()) {
    const stated = context[id]
    if (stated === undefined) continue
    table.contextStated[field]![at >>> 5]! |= 1 << (at & 31)
    const places = table.contextPlaces[field]!
    const same = places.get(stated)
    if (same === undefined) places.set(stated, [at])
    else same.push(at)
  }
}

/** The places of the catalogue's causes, by id. */
export function causePlaces(catalogue: Catalogue): Map<string, number> {
  return new Map(catalogue.causes.map((cause, place) => [cause.id, place]))
}
