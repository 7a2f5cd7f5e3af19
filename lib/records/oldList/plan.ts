import { positionTemplates } from '@/lib/catalogue/positions'
import { plainSpelling } from '@/lib/core/find'
import { formatPressure } from '@/lib/core/pressure'
import { breakBeyondMake } from '@/lib/core/rating'
import type { Level } from '@/lib/core/vocabulary'
import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { PositionBody } from '../kinds/position'
import type { ReportBody } from '../kinds/report'
import { groupedBy } from '../view/grouped'
import { openRatings } from '../view/openRatings'
import { isOddSize } from './oddSize'
import { whatIsOnFile } from './onFile'
import { type Answers, type Place, type Placed, placeKey, placeOf, type Thing, thingKey } from './places'
import { fieldsOf, type OldRow, type Reading, type ReadRow, readRow, unitsInHeads } from './readRow'
import type { Table, TableRow } from './readTable'
import { reportsOf } from './reports'
import { ratingRefusals } from './ruleTwo'

/** One report that a row would become, and what it would come to. */
export type PlannedReport = {
  id: string
  body: ReportBody
  /** The level of its own value at its position, once the whole list is in. */
  level: Level
  /** What the number looks like, and what speaks against it: sentences. */
  looks: string[]
}

/** What would become of a row. */
export type Verdict = { row: number } & (
  | { outcome: 'taken over'; reports: PlannedReport[] }
  /** An unusual number: not taken over unless the person says that it is what the list says. */
  | { outcome: 'look again'; reports: PlannedReport[]; sentence: string }
  | { outcome: 'duplicate'; sentence: string; of: { row: number } | { record: string } }
  | { outcome: 'refused'; rule: string; sentence: string }
  | { outcome: 'not answered' | 'left out'; sentence: string }
)

/** A maker, range or position that is added with the list. */
export type PlannedThing = { id: string; kind: string; body: Record<string, unknown>; row: number }

export type Plan = { verdicts: Verdict[]; things: PlannedThing[] }

/** How far the work is, in rows of all. */
export type Step = { done: number; of: number }

export type PlanOptions = {
  table: Table
  fileName: string
  reading: Reading
  answers: Answers
  /** Whether unusual numbers are taken over as they stand. */
  takeOdd: boolean
  file: TeamFile
  me: string
  /** ISO 8601. */
  now: string
  newId: () => string
}

/** Rows between two steps, and positions. */
const rowsAStep = 50
const positionsAStep = 5

/**
 * Judges every row of an old list, line by line, and writes nothing: what would be recorded, at which standing it
 * would be, what looks like a slip, what is there already, and what is refused and why. The same plan is what is
 * recorded once it is confirmed.
 */
export function* planImport(options: PlanOptions): Generator<Step, Plan> {
  const { table, reading, answers, file, now, me, takeOdd } = options
  const onFile = whatIsOnFile(file)
  const ratings = openRatings(file, now)
  const headUnits = unitsInHeads(table, reading.columns)
  const whyNoRating = ratingRefusals(table.head, reading.columns, onFile.genericIn)
  const places = new Map<string, Placed>()
  const things = newThings(options)
  const seen = new Map<string, { row: number } | { record: string }>()
  const lookedUp = new Set<string>()
  const of = table.rows.length
  const verdicts: Verdict[] = []
  const waiting: { position: Entry<PositionBody>; reports: PlannedReport[] }[] = []

  for (const [at, tableRow] of table.rows.entries()) {
    if (at % rowsAStep === 0) yield { done: at / 2, of }
    verdicts.push(judgeRow(tableRow))
  }

  const byPosition = groupedBy(waiting, ({ position }) => position.id)
  let [done, positions] = [0, 0]
  for (const group of byPosition.values()) {
    if (positions % positionsAStep === 0)
      yield { done: of / 2 + (done / Math.max(1, waiting.length)) * (of / 2), of }
    judgeTogether(group)
    done += group.length
    positions += 1
  }
  return { verdicts, things: things.named(verdicts) }

  function judgeRow(tableRow: TableRow): Verdict {
    const row = fieldsOf(tableRow, reading.columns)
    const refusal = whyNoRating(tableRow.cells)
    if (refusal !== undefined) return { row: row.row, outcome: 'refused', ...refusal }
    const read = readRow(row, reading, headUnits, now)
    if (!read.ok)
      return { row: row.row, outcome: 'refused', rule: read.problem.code, sentence: read.problem.message }
    const key = placeKey(row, reading.position)
    const placed = places.get(key) ?? placeOf(row, reading.position, onFile, answers)
    places.set(key, placed)
    if ('refused' in placed)
      return { row: row.row, outcome: 'refused', rule: 'its place', sentence: placed.refused }
    if ('leftOut' in placed) return { row: row.row, outcome: 'left out', sentence: placed.leftOut }
    if ('asked' in placed)
      return {
        row: row.row,
        outcome: 'not answered',
        sentence: `The ${placed.asked} “${placed.name}” is not on file, and nobody has said what to do with it.`,
      }
    return judgePlaced(row, read.value, placed.place)
  }

  function judgePlaced(row: OldRow, read: ReadRow, place: Place): Verdict {
    const position = things.positionAt(place, row)
    const made = reportsOf(read, position, options.fileName)
    if (!made.ok)
      return { row: row.row, outcome: 'refused', rule: made.problem.code, sentence: made.problem.message }
    lookUp(position.id)
    const keys = made.value.map((body) => sameKey(position.id, body))
    const there = keys.map((key) => seen.get(key))
    if (there.every((one) => one !== undefined)) {
      const of = there[0]!
      return {
        row: row.row,
        outcome: 'duplicate',
        of,
        sentence:
          'row' in of
            ? `Row ${of.row} says the same.`
            : 'The log has a report that says the same from the same source.',
      }
    }
    const reports = made.value
      .map(
        (body, nth): PlannedReport => ({
          id: options.newId(),
          body,
          level: 'Unverified',
          looks: read.values[nth]!.warnings.map(({ message }) => message),
        }),
      )
      .filter((_, nth) => there[nth] === undefined)
    const turnedRound = whyTurnedRound(made.value)
    for (const report of reports) if (turnedRound !== undefined) report.looks.push(turnedRound)
    const odd =
      turnedRound ??
      read.values.flatMap(({ warnings }) => warnings).find(({ code }) => isOddSize(code))?.message
    if (odd === undefined || takeOdd) {
      for (const key of keys) if (!seen.has(key)) seen.set(key, { row: row.row })
      waiting.push({ position, reports })
    }
    return odd === undefined || takeOdd
      ? { row: row.row, outcome: 'taken over', reports }
      : { row: row.row, outcome: 'look again', reports, sentence: odd }
  }

  /** What the log has at a position, once. */
  function lookUp(positionId: string): void {
    if (lookedUp.has(positionId)) return
    lookedUp.add(positionId)
    for (const { id, body } of ratings.reportsAt(positionId))
      seen.set(sameKey(positionId, body), { record: id })
  }

  /** The standings at one position, with all that the list says of it. */
  function judgeTogether(group: typeof waiting): void {
    const { position } = group[0]!
    const entries = group.flatMap(({ reports }) =>
      reports.map(({ id, body }): Entry<ReportBody> => ({ id, body, by: me, at: now, waiting: true })),
    )
    const { closes, opens, unstated } = ratings.at(position, entries)
    const byId = new Map(
      group.flatMap(({ reports }) => reports.map((report) => [report.id, report] as const)),
    )
    for (const standing of [closes, opens, unstated]) {
      if (standing.level === 'Not on file') continue
      for (const id of standing.reportIds) {
        const report = byId.get(id)
        if (report !== undefined) report.level = standing.level
      }
      for (const { reportIds, disputes, slip } of standing.rivals) {
        for (const id of reportIds) {
          const report = byId.get(id)
          if (report === undefined) continue
          if (disputes) report.level = 'In dispute'
          if (slip !== undefined)
            report.looks.push(`Beside the likeliest value it looks like a slip: ${slip}.`)
        }
      }
      for (const { reportId, agrees } of standing.leads) {
        if (!agrees) byId.get(reportId)?.looks.push('A better report on file names another value.')
      }
    }
  }
}

/** Why the make and the break of one row look swapped: a sentence; undefined where they stand as usual. */
function whyTurnedRound(bodies: readonly ReportBody[]): string | undefined {
  const [closes, opens] = (['closes', 'opens'] as const).map((action) =>
    bodies.find((body) => body.action === action),
  )
  if (closes === undefined || opens === undefined || !breakBeyondMake(closes, opens)) return undefined
  const said = ({ pascals, unit, decimals }: ReportBody) => formatPressure(pascals, unit, decimals)
  return `It would open at ${said(opens)} and close at ${said(closes)}. A switch opens at less than it closes at: the two may have been swapped. Ask which is which, and put it right in the list.`
}

/** Reports of one key say the same from the same source. */
function sameKey(positionId: string, body: ReportBody): string {
  const { action, limit, pascals, sense, toleranceAbove, toleranceBelow, source, proof, saidOn } = body
  const tolerances = [toleranceAbove, toleranceBelow].map((pascals) => pascals?.toFixed(3))
  const coverage = [body.revisionRange, body.serialRange, body.elevationBand, body.partNumber]
  const shown = [
    positionId,
    action,
    limit,
    pascals.toFixed(3),
    sense,
    tolerances,
    source,
    proof,
    saidOn,
    coverage,
  ]
  return JSON.stringify(shown)
}

/** The makers, ranges and positions that are added with the list: each once, and only if a row of them is taken over. */
function newThings({ newId, table, reading, answers, file }: PlanOptions) {
  const made = new Map<string, PlannedThing & { needs: string[] }>()
  const positions = new Map<string, Entry<PositionBody>>()
  const models = modelsByPlace(table, reading)

  const thing = (
    which: Thing,
    kind: string,
    row: number,
    body: () => Record<string, unknown>,
    needs: readonly string[],
  ): string => {
    if ('id' in which) return which.id
    const there = made.get(thingKey(which))
    if (there !== undefined) return there.id
    const one = { id: newId(), kind, body: body(), row, needs: [...needs] }
    made.set(thingKey(which), one)
    return one.id
  }

  return {
    positionAt(place: Place, row: OldRow): Entry<PositionBody> {
      const key = thingKey(place.position)
      const known = positions.get(key)
      if (known !== undefined) return known
      const onFile = 'id' in place.position ? file.positions.get(place.position.id) : undefined
      if (onFile !== undefined) {
        positions.set(key, onFile)
        return onFile
      }
      const { maker, range } = place
      const { cells } = row
      const makerId = thing(maker, 'maker', row.row, () => ({ name: cells.maker }), [])
      const rangeBody = () => ({
        makerId,
        name: cells.range ?? cells.model,
        modelPatterns: models(row),
        fuel: 'not stated',
        heat: 'not stated',
      })
      const rangeId = thing(range, 'equipment range', row.row, rangeBody, [makerId])
      const body = positionBody(rangeId, cells.position ?? reading.position, answers)
      const id = thing(place.position, 'position', row.row, () => body, [makerId, rangeId])
      const entry: Entry<PositionBody> = { id, body, by: '', at: '', waiting: true }
      positions.set(key, entry)
      return entry
    },
    /** Those that the rows taken over need, makers before ranges before positions. */
    named(verdicts: readonly Verdict[]): PlannedThing[] {
      const wanted = new Set<string>()
      for (const verdict of verdicts)
        if (verdict.outcome === 'taken over')
          for (const { body } of verdict.reports) wanted.add(body.positionId)
      const all = [...made.values()]
      for (const { id, needs } of all) if (wanted.has(id)) for (const need of needs) wanted.add(need)
      const order = ['maker', 'equipment range', 'position']
      return all
        .filter(({ id }) => wanted.has(id))
        .map(({ needs: _needs, ...one }) => one)
        .sort((one, other) => order.indexOf(one.kind) - order.indexOf(other.kind))
    },
  }
}

/** A position as far as a list tells: the stage from its name where it is a usual one, all else not stated. */
function positionBody(rangeId: string, written: string, { positions }: Answers): PositionBody {
  const answer = positions[plainSpelling(written)]
  const name = typeof answer === 'object' && 'as' in answer ? answer.as : written
  const own = positions[plainSpelling(name)]
  const template = positionTemplates.find((each) => plainSpelling(each.name) === plainSpelling(name))
  return {
    rangeId,
    name: template?.name ?? name,
    stage: template?.stage ?? 'not stated',
    kind: typeof own === 'object' && 'kind' in own ? own.kind : (template?.kind ?? 'one-port'),
    between: 'not stated',
    tap: 'not stated',
    sense: 'not stated',
  }
}

/** The models that the list names for a range that is to be added; the range's own name where it names none. */
function modelsByPlace(table: Table, { columns }: Reading): (row: OldRow) => string[] {
  const found = new Map<string, Set<string>>()
  const keyOf = ({ cells }: OldRow) => JSON.stringify([cells.maker, cells.range ?? cells.model])
  for (const tableRow of table.rows) {
    const row = fieldsOf(tableRow, columns)
    const { model } = row.cells
    if (model === undefined) continue
    const key = keyOf(row)
    found.set(key, (found.get(key) ?? new Set()).add(model))
  }
  const mostPatterns = 40
  return (row) => {
    const models = [...(found.get(keyOf(row)) ?? [])].slice(0, mostPatterns)
    return models.length > 0 ? models : [row.cells.range ?? row.cells.model ?? '']
  }
}
