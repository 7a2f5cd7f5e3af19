import type { FurnaceForRating, RatingStanding } from '@/lib/core/rating'
import type { Action, Level } from '@/lib/core/vocabulary'
import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import { withdrawnRecords } from '../../fold/withdrawals'
import type { ReportBody } from '../../kinds/report'
import type { SettlementBody } from '../../kinds/settlement'
import { furnaceForRating } from '../furnaceForRating'
import { ratingAt, ratingSettings } from '../setpoint'
import { waysAt } from '../waysAt'

/** What a record did to the level of a rating. `otherValue`: the number shown is another than before. */
export type LevelChange = { action: Action; from: Level; to: Level; otherValue: boolean }

export type StandingChange = {
  positionId: string
  /** For which furnace it was weighed; none where the record is about every furnace of the range. */
  furnaceId?: string
  /** Empty when the record left every level there as it was; then `elsewhere` says what it changed for which others. */
  changes: LevelChange[]
  elsewhere: { holdsFor: string[]; changes: LevelChange[] }[]
}

/**
 * What a report, a settlement, or the withdrawal of one changed in the standing of its switch position: weighed with
 * what the log held just before it, and again with it. What was joined as duplicates is taken as joined from the start,
 * and what a part is as it is now.
 *
 * @returns undefined for a record that no rating rests on
 */
export function standingChange(file: TeamFile, id: string): StandingChange | undefined {
  const about = ratedBy(file, id)
  const position = about && file.positions.get(file.keptId(about.positionId))
  const record = file.records.get(id)
  if (about === undefined || position === undefined || record === undefined) return undefined
  const furnaceEntry =
    about.furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(about.furnaceId))
  const furnace: FurnaceForRating = furnaceEntry === undefined ? {} : furnaceForRating(furnaceEntry)
  const supersededPartNumbers = supersededIn(file)
  const weigh = (then: TeamFile, at: FurnaceForRating) =>
    ratingAt(then, position, at, {
      // Which parts are superseded is the same for every record, and dear to look up for each.
      ...ratingSettings({ ...then, supersessions: new Map() }, record.entry.at),
      supersededPartNumbers,
    })
  const at = placeOf(file, id)
  const [earlier, later] = [asItStood(file, position.id, at - 1), asItStood(file, position.id, at)]
  const changesFor = (known: FurnaceForRating): LevelChange[] => {
    const [before, after] = [weigh(earlier, known), weigh(later, known)]
    return (['closes', 'opens', 'not stated'] as const).flatMap((action) => {
      const of = action === 'not stated' ? 'unstated' : action
      return changeBetween(action, before[of], after[of])
    })
  }
  const changes = changesFor(furnace)
  const ways = changes.length > 0 ? [] : waysAt(file, position)
  return {
    positionId: position.id,
    ...(furnaceEntry === undefined ? {} : { furnaceId: furnaceEntry.id }),
    changes,
    elsewhere: alike(ways.map((way) => ({ words: way.words, changes: changesFor(way.furnace) }))),
  }
}

/** The ways in which something changed, those in which the same did together. */
function alike(ways: readonly { words: string; changes: LevelChange[] }[]): StandingChange['elsewhere'] {
  const found = new Map<string, { holdsFor: string[]; changes: LevelChange[] }>()
  for (const { words, changes } of ways) {
    if (changes.length === 0) continue
    const key = JSON.stringify(changes)
    found.set(key, { holdsFor: [...(found.get(key)?.holdsFor ?? []), words], changes })
  }
  return [...found.values()]
}

const superseded = new WeakMap<TeamFile, readonly string[]>()

/** The numbers of the parts that a later one replaces. */
function supersededIn(file: TeamFile): readonly string[] {
  const known = superseded.get(file)
  if (known !== undefined) return known
  const replaced = new Set(counting(file.supersessions).map(({ body }) => file.keptId(body.oldPartId)))
  const made = counting(file.parts).flatMap(({ id, body }) => (replaced.has(id) ? [body.partNumber] : []))
  superseded.set(file, made)
  return made
}

function changeBetween(action: Action, before: RatingStanding, after: RatingStanding): LevelChange[] {
  const otherValue = before.pascals !== after.pascals || before.limit !== after.limit
  if (before.level === after.level && !otherValue) return []
  return [{ action, from: before.level, to: after.level, otherValue }]
}

type Rated = { positionId: string; furnaceId?: string }

/** What a record rates, itself or by what it takes back. */
function ratedBy(file: TeamFile, id: string): Rated | undefined {
  const record = file.records.get(id)
  if (record?.kind === 'report') return record.entry.body as ReportBody
  if (record?.kind === 'settlement') {
    const { positionId, evidenceReportId } = record.entry.body as SettlementBody
    return { positionId, furnaceId: file.reports.get(evidenceReportId)?.body.furnaceId }
  }
  return record?.kind === 'withdrawal' ? ratedBy(file, String(record.entry.body.record)) : undefined
}

type Places = { of: ReadonlyMap<string, number>; withdrawals: { id: string; place: number }[] }
const places = new WeakMap<TeamFile, Places>()

/** Where each record stands in the order of the log, in which the file keeps them. */
function placesIn(file: TeamFile): Places {
  const known = places.get(file)
  if (known !== undefined) return known
  const ids = [...file.records.keys()]
  const made = {
    of: new Map(ids.map((id, place) => [id, place])),
    withdrawals: ids.flatMap((id, place) =>
      file.records.get(id)?.kind === 'withdrawal' ? [{ id, place }] : [],
    ),
  }
  places.set(file, made)
  return made
}

const placeOf = (file: TeamFile, id: string): number => placesIn(file).of.get(id) ?? -1

/**
 * The file as far as a position's rating rests on it, as the log stood at a place: its reports, the settlements, and the
 * reports of every position that was settled, by which sources are learned.
 */
function asItStood(file: TeamFile, positionId: string, upTo: number): TeamFile {
  const { of, withdrawals } = placesIn(file)
  const withdrawn = withdrawnRecords(
    withdrawals
      .filter(({ place }) => place <= upTo)
      .map(({ id }) => {
        const { body, by, at } = file.records.get(id)!.entry
        return { id, kind: 'withdrawal', version: 1, body, author: by, saidAt: at, device: '' }
      }),
  )
  const then = <Body>(
    entries: ReadonlyMap<string, Entry<Body>>,
    matters: (body: Body) => boolean = () => true,
  ): ReadonlyMap<string, Entry<Body>> =>
    new Map(
      [...entries.values()]
        .filter(({ id, body }) => (of.get(id) ?? -1) <= upTo && matters(body))
        .map(({ withdrawn: _now, ...entry }) => {
          // A report goes with the import that it came in by.
          const gone =
            withdrawn.get(entry.id) ?? withdrawn.get(file.importedFrom.get(entry.id)?.importId ?? '')
          return [entry.id, gone === undefined ? entry : { ...entry, withdrawn: gone }]
        }),
    )
  const settlements = then(file.settlements)
  const weighed = new Set([
    positionId,
    ...[...settlements.values()].map(({ body }) => file.keptId(body.positionId)),
  ])
  return {
    ...file,
    settlements,
    reports: then(
      file.reports,
      (body) => weighed.has(file.keptId(body.positionId)) || isSister(file, positionId, body),
    ),
  }
}

/** A sister's values are known ones by which swapped switches show up. */
const isSister = (file: TeamFile, positionId: string, { positionId: other }: ReportBody): boolean => {
  const position = file.positions.get(positionId)
  const sister = file.positions.get(file.keptId(other))
  return (
    position !== undefined &&
    sister !== undefined &&
    file.keptId(position.body.rangeId) === file.keptId(sister.body.rangeId)
  )
}
