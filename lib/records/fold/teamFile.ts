import type { AnswerSeenBody } from '../kinds/answerSeen'
import type { AsksTooBody } from '../kinds/asksToo'
import type { BaselineBody } from '../kinds/baseline'
import type { CallAttemptBody } from '../kinds/callAttempt'
import type { CaseBody } from '../kinds/case'
import type { CombustionTestBody } from '../kinds/combustionTest'
import type { DangerAnswerBody } from '../kinds/dangerAnswer'
import type { EndingBody } from '../kinds/ending'
import type { EquipmentRangeBody } from '../kinds/equipmentRange'
import type { FindingBody } from '../kinds/finding'
import type { FittedPartBody } from '../kinds/fittedPart'
import type { FoundFittedBody } from '../kinds/foundFitted'
import type { FurnaceBody } from '../kinds/furnace'
import type { GaugeBody } from '../kinds/gauge'
import type { ImportBody } from '../kinds/import'
import type { LiftingBody } from '../kinds/lifting'
import type { MakerBody } from '../kinds/maker'
import type { OrganisationBody } from '../kinds/organisation'
import type { PartBody } from '../kinds/part'
import type { PhotoBody } from '../kinds/photo'
import type { PositionBody } from '../kinds/position'
import type { PreferenceBody } from '../kinds/preference'
import type { PromiseBody } from '../kinds/promise'
import type { RatingRequestBody } from '../kinds/ratingRequest'
import type { ReadingBody } from '../kinds/reading'
import type { AnyRepairBody } from '../kinds/repair'
import type { ReportBody } from '../kinds/report'
import type { SameAsBody } from '../kinds/sameAs'
import type { SettlementBody } from '../kinds/settlement'
import type { ShutDownNoticeBody } from '../kinds/shutDownNotice'
import type { SupersessionBody } from '../kinds/supersession'
import type { SwitchCheckBody } from '../kinds/switchCheck'
import type { TagBody } from '../kinds/tag'
import type { VisitBody } from '../kinds/visit'
import type { WarrantyAnswerBody } from '../kinds/warrantyAnswer'
import { isKnown } from '../kindVersions'
import { type Entry, entryOf, type HeldRecord } from './entry'
import { type ImportedFrom, importedRecords, withdrawWithImports } from './imports'
import { keptIds } from './keptIds'
import { withdrawnRecords } from './withdrawals'

/** Everything that the screens need of the log, by kind and id. Withdrawn entries are in it, marked. */
export type TeamFile = {
  makers: ReadonlyMap<string, Entry<MakerBody>>
  ranges: ReadonlyMap<string, Entry<EquipmentRangeBody>>
  positions: ReadonlyMap<string, Entry<PositionBody>>
  parts: ReadonlyMap<string, Entry<PartBody>>
  supersessions: ReadonlyMap<string, Entry<SupersessionBody>>
  furnaces: ReadonlyMap<string, Entry<FurnaceBody>>
  gauges: ReadonlyMap<string, Entry<GaugeBody>>
  reports: ReadonlyMap<string, Entry<ReportBody>>
  settlements: ReadonlyMap<string, Entry<SettlementBody>>
  requests: ReadonlyMap<string, Entry<RatingRequestBody>>
  foundFitted: ReadonlyMap<string, Entry<FoundFittedBody>>
  repairs: ReadonlyMap<string, Entry<AnyRepairBody>>
  baselines: ReadonlyMap<string, Entry<BaselineBody>>
  cases: ReadonlyMap<string, Entry<CaseBody>>
  combustionTests: ReadonlyMap<string, Entry<CombustionTestBody>>
  endings: ReadonlyMap<string, Entry<EndingBody>>
  findings: ReadonlyMap<string, Entry<FindingBody>>
  liftings: ReadonlyMap<string, Entry<LiftingBody>>
  readings: ReadonlyMap<string, Entry<ReadingBody>>
  shutDownNotices: ReadonlyMap<string, Entry<ShutDownNoticeBody>>
  dangerAnswers: ReadonlyMap<string, Entry<DangerAnswerBody>>
  fittedParts: ReadonlyMap<string, Entry<FittedPartBody>>
  switchChecks: ReadonlyMap<string, Entry<SwitchCheckBody>>
  visits: ReadonlyMap<string, Entry<VisitBody>>
  asksToo: ReadonlyMap<string, Entry<AsksTooBody>>
  promises: ReadonlyMap<string, Entry<PromiseBody>>
  organisations: ReadonlyMap<string, Entry<OrganisationBody>>
  callAttempts: ReadonlyMap<string, Entry<CallAttemptBody>>
  answersSeen: ReadonlyMap<string, Entry<AnswerSeenBody>>
  tags: ReadonlyMap<string, Entry<TagBody>>
  photos: ReadonlyMap<string, Entry<PhotoBody>>
  /** The pictures that the server holds, by the hash of the bytes that were sent. */
  picturesHeld: ReadonlySet<string>
  warrantyAnswers: ReadonlyMap<string, Entry<WarrantyAnswerBody>>
  imports: ReadonlyMap<string, Entry<ImportBody>>
  /** Which import a record came in by, and the row of its file. */
  importedFrom: ReadonlyMap<string, ImportedFrom>
  /** Newest preference of each person, by person. */
  preferences: ReadonlyMap<string, PreferenceBody>
  /** Every record by id, whatever its kind, in the order of the log; without a number while it is on this device only. */
  records: ReadonlyMap<string, { kind: string; entry: Entry<Record<string, unknown>>; seq?: number }>
  /** Duplicate to the record that is kept. */
  keptId(id: string): string
  /** By how much the server put right what each device said last, in milliseconds, by device. */
  clockShifts: ReadonlyMap<string, number>
  /** Kinds and versions that this program does not know: it wants an update. */
  unknown: readonly string[]
}

/**
 * Folds the log into the team file. Pure, and a union: the same records give the same file on every device,
 * whatever order they arrived in.
 *
 * @param records what the log holds, and after it what still waits on this device; any order
 * @param picturesHeld the hashes of the pictures that the server holds: a photo is a proof only with its picture
 */
export function foldTeamFile(
  records: readonly HeldRecord[],
  picturesHeld: ReadonlySet<string> = new Set(),
): TeamFile {
  const { inOrder, clockShifts } = withClocksPutRight([...records].sort(byLogOrder))
  const withdrawn = withdrawnRecords(inOrder)
  const importedFrom = importedRecords(inOrder)
  withdrawWithImports(inOrder, importedFrom, withdrawn)
  const byId = new Map<string, { kind: string; entry: Entry<Record<string, unknown>>; seq?: number }>()
  const byKind = new Map<string, Map<string, Entry<Record<string, unknown>>>>()
  const unknown = new Set<string>()
  const joins: SameAsBody[] = []
  const preferences = new Map<string, PreferenceBody>()

  for (const record of inOrder) {
    if (!isKnown(record)) {
      unknown.add(`${record.kind}, version ${record.version}`)
      continue
    }
    const entry = entryOf(record)
    const gone = withdrawn.get(record.id)
    if (gone !== undefined) entry.withdrawn = gone
    byId.set(record.id, {
      kind: record.kind,
      entry,
      ...(record.seq === undefined ? {} : { seq: record.seq }),
    })
    const ofKind = byKind.get(record.kind) ?? new Map()
    byKind.set(record.kind, ofKind.set(record.id, entry))
    if (gone !== undefined) continue
    if (record.kind === 'preference') preferences.set(record.author, record.body as PreferenceBody)
    if (record.kind === 'same as') joins.push(record.body as SameAsBody)
  }

  const keptId = keptIds(joins)
  for (const entries of byKind.values()) {
    for (const entry of entries.values()) {
      const kept = keptId(entry.id)
      if (kept !== entry.id) entry.sameAs = kept
    }
  }

  const of = <Body>(kind: string) =>
    (byKind.get(kind) ?? new Map()) as unknown as ReadonlyMap<string, Entry<Body>>
  return {
    makers: of('maker'),
    ranges: of('equipment range'),
    positions: of('position'),
    parts: of('part'),
    supersessions: of('supersession'),
    furnaces: of('furnace'),
    gauges: of('gauge'),
    reports: of('report'),
    settlements: of('settlement'),
    requests: of('rating request'),
    foundFitted: of('found fitted'),
    repairs: of('repair'),
    baselines: of('baseline'),
    cases: of('case'),
    combustionTests: of('combustion test'),
    endings: of('ending'),
    findings: of('finding'),
    liftings: of('lifting'),
    readings: of('reading'),
    shutDownNotices: of('shut-down notice'),
    dangerAnswers: of('danger answer'),
    fittedParts: of('fitted part'),
    switchChecks: of('switch check'),
    visits: of('visit'),
    asksToo: of('asks too'),
    promises: of('promise'),
    organisations: of('organisation'),
    callAttempts: of('call attempt'),
    answersSeen: of('answer seen'),
    tags: of('tag'),
    photos: of('photo'),
    warrantyAnswers: of('warranty answer'),
    imports: of('import'),
    importedFrom,
    picturesHeld,
    preferences,
    records: byId,
    keptId,
    clockShifts,
    unknown: [...unknown].sort(),
  }
}

/**
 * What still waits on a device was said by the same clock as what that device sent last, so it is put right by the
 * same shift: else it would sort before what was said after it.
 */
function withClocksPutRight(records: readonly HeldRecord[]) {
  const clockShifts = new Map<string, number>()
  const inOrder = records.map((record) => {
    if (record.clockShiftMs !== undefined) {
      clockShifts.set(record.device, record.clockShiftMs)
      return record
    }
    const clockShiftMs = clockShifts.get(record.device)
    return clockShiftMs === undefined ? record : { ...record, clockShiftMs }
  })
  return { inOrder, clockShifts }
}

/** Records in the log by their number; those that wait come after, in the order in which they were said. */
function byLogOrder(a: HeldRecord, b: HeldRecord): number {
  const bySeq = (a.seq ?? Number.POSITIVE_INFINITY) - (b.seq ?? Number.POSITIVE_INFINITY)
  if (!Number.isNaN(bySeq) && bySeq !== 0) return bySeq
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0
}

/** The entries that count: neither withdrawn nor a duplicate of another. */
export function counting<Body>(entries: ReadonlyMap<string, Entry<Body>>): Entry<Body>[] {
  return [...entries.values()].filter((entry) => entry.withdrawn === undefined && entry.sameAs === undefined)
}
