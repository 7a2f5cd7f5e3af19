import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseBody } from '@/lib/records/kinds/case'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { DangerAnswerBody } from '@/lib/records/kinds/dangerAnswer'
import type { EndingBody } from '@/lib/records/kinds/ending'
import type { FindingBody } from '@/lib/records/kinds/finding'
import type { FittedPartBody } from '@/lib/records/kinds/fittedPart'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import type { AnyRepairBody } from '@/lib/records/kinds/repair'
import type { SwitchCheckBody } from '@/lib/records/kinds/switchCheck'
import type { VisitBody } from '@/lib/records/kinds/visit'
import { groupedBy } from '../grouped'
import { ofFurnace, oldestFirst } from '../ofFurnace'
import { unsuitableIn } from '../unsuitable'
import { leftOffWithoutNotice } from './leftOff'
import { type Notice, noticesOf } from './notices'

/** One visit with its endings. More than one that stands is a disagreement to settle by withdrawing all but one. */
export type VisitFile = { entry: Entry<VisitBody>; endings: Entry<EndingBody>[] }

/** Everything on record about one case, each list oldest first, nothing withdrawn in it. */
export type CaseFile = {
  entry: Entry<CaseBody>
  furnace: Entry<FurnaceBody>
  visits: VisitFile[]
  /** Every finding said, also those that a newer one replaced. */
  findings: Entry<FindingBody>[]
  readings: Entry<ReadingBody>[]
  combustionTests: Entry<CombustionTestBody>[]
  repairs: Entry<AnyRepairBody>[]
  switchChecks: Entry<SwitchCheckBody>[]
  dangerAnswers: Entry<DangerAnswerBody>[]
  /** The part numbers read off this furnace's switches, on whatever case, and all that were read on this one. */
  fittedParts: Entry<FittedPartBody>[]
  /** Switches found in this furnace although they should not be, and not yet put right. */
  unsuitable: Entry<FoundFittedBody>[]
  /** The shut-down notices of the furnace. */
  notices: Notice[]
  /** Endings, of any case, that left the furnace off without a notice: it is left off by them too. */
  leftOffUnnoticed: Entry<EndingBody>[]
  /** Cases on the same furnace and circuit that were opened before, newest first. */
  earlier: Entry<CaseBody>[]
}

type ByCase<Body> = ReadonlyMap<string, Entry<Body>[]>

/** Records of every case, sorted once for a whole team file. */
type CaseIndex = {
  visits: ByCase<VisitBody>
  endings: ReadonlyMap<string, Entry<EndingBody>[]>
  findings: ByCase<FindingBody>
  readings: ByCase<ReadingBody>
  combustionTests: ByCase<CombustionTestBody>
  repairs: ByCase<AnyRepairBody>
  switchChecks: ByCase<SwitchCheckBody>
  dangerAnswers: ByCase<DangerAnswerBody>
  fittedParts: ByCase<FittedPartBody>
  cases: ReadonlyMap<string, Entry<CaseBody>[]>
}

const indexes = new WeakMap<TeamFile, CaseIndex>()

function indexOf(file: TeamFile): CaseIndex {
  const known = indexes.get(file)
  if (known !== undefined) return known
  const byCase = <Body extends { caseId?: string }>(entries: ReadonlyMap<string, Entry<Body>>) =>
    grouped(entries, ({ caseId }) => caseId)
  const index: CaseIndex = {
    visits: byCase(file.visits),
    endings: grouped(file.endings, ({ visitId }) => visitId),
    findings: byCase(file.findings),
    readings: byCase(file.readings),
    combustionTests: byCase(file.combustionTests),
    repairs: byCase(file.repairs),
    switchChecks: byCase(file.switchChecks),
    dangerAnswers: byCase(file.dangerAnswers),
    fittedParts: byCase(file.fittedParts),
    cases: grouped(file.cases, ({ furnaceId }) => file.keptId(furnaceId)),
  }
  indexes.set(file, index)
  return index
}

function grouped<Body>(
  entries: ReadonlyMap<string, Entry<Body>>,
  keyOf: (body: Body) => string | undefined,
): Map<string, Entry<Body>[]> {
  const groups = groupedBy(counting(entries), ({ body }) => keyOf(body))
  for (const group of groups.values()) group.sort(oldestFirst)
  return groups
}

/** Gathers a case; undefined when it, or its furnace, is not on this device. A withdrawn case stays readable. */
export function caseFileOf(file: TeamFile, caseId: string): CaseFile | undefined {
  const entry = file.cases.get(file.keptId(caseId))
  const furnace = entry && file.furnaces.get(file.keptId(entry.body.furnaceId))
  if (entry === undefined || furnace === undefined) return undefined
  const index = indexOf(file)
  const of = <Body>(entries: ByCase<Body>): Entry<Body>[] => entries.get(entry.id) ?? []
  // One read on this case while its furnace was joined to another by mistake names the other.
  const fittedParts = new Set([...ofFurnace(file, file.fittedParts, furnace.id), ...of(index.fittedParts)])
  return {
    entry,
    furnace,
    visits: of(index.visits).map((visit) => ({ entry: visit, endings: index.endings.get(visit.id) ?? [] })),
    findings: of(index.findings),
    readings: of(index.readings),
    combustionTests: of(index.combustionTests),
    repairs: of(index.repairs),
    switchChecks: of(index.switchChecks),
    dangerAnswers: of(index.dangerAnswers),
    fittedParts: [...fittedParts].sort(oldestFirst),
    unsuitable: unsuitableIn(file, furnace.id),
    notices: noticesOf(file, furnace.id),
    leftOffUnnoticed: leftOffWithoutNotice(file, furnace.id),
    earlier: (index.cases.get(furnace.id) ?? [])
      .filter(
        (other) =>
          other.id !== entry.id && oldestFirst(other, entry) < 0 && other.body.circuit === entry.body.circuit,
      )
      .reverse(),
  }
}

/** The cases of a furnace that count, oldest first. */
export const casesOf = (file: TeamFile, furnaceId: string): Entry<CaseBody>[] =>
  indexOf(file).cases.get(file.keptId(furnaceId)) ?? []
