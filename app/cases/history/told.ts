import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { BaselineBody } from '@/lib/records/kinds/baseline'
import type { CaseBody } from '@/lib/records/kinds/case'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { DangerAnswerBody } from '@/lib/records/kinds/dangerAnswer'
import type { EndingBody } from '@/lib/records/kinds/ending'
import type { FindingBody } from '@/lib/records/kinds/finding'
import type { FittedPartBody } from '@/lib/records/kinds/fittedPart'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import type { LiftingBody } from '@/lib/records/kinds/lifting'
import type { PhotoBody } from '@/lib/records/kinds/photo'
import type { AnyRepairBody } from '@/lib/records/kinds/repair'
import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'
import type { SwitchCheckBody } from '@/lib/records/kinds/switchCheck'
import type { VisitBody } from '@/lib/records/kinds/visit'
import { type CaseFile, casesOf } from '@/lib/records/view/case/caseFile'
import { judgedThen } from '@/lib/records/view/case/judgedCase'
import type { JudgedReading } from '@/lib/records/view/case/judgedReading'

/** One thing that was said in a case, by its kind. What was withdrawn is among them, marked. */
export type Told =
  | { kind: 'case'; entry: Entry<CaseBody> }
  | { kind: 'visit'; entry: Entry<VisitBody> }
  | { kind: 'finding'; entry: Entry<FindingBody> }
  | { kind: 'reading'; entry: JudgedReading['entry']; judged: JudgedReading }
  | { kind: 'combustion test'; entry: Entry<CombustionTestBody> }
  | { kind: 'danger answer'; entry: Entry<DangerAnswerBody> }
  | { kind: 'found fitted'; entry: Entry<FoundFittedBody> }
  | { kind: 'fitted part'; entry: Entry<FittedPartBody> }
  | { kind: 'switch check'; entry: Entry<SwitchCheckBody> }
  | { kind: 'repair'; entry: Entry<AnyRepairBody> }
  | { kind: 'baseline'; entry: Entry<BaselineBody> }
  | { kind: 'ending'; entry: Entry<EndingBody> }
  | { kind: 'shut-down notice'; entry: Entry<ShutDownNoticeBody> }
  | { kind: 'lifting'; entry: Entry<LiftingBody> }
  | { kind: 'photo'; entry: Entry<PhotoBody> }

/**
 * Everything said in a case, oldest first, withdrawn records among the others. What belongs to the furnace and names
 * no case (a switch found fitted, a notice) counts as the case's from the day it was opened until the furnace's next.
 */
export function toldIn(file: TeamFile, ofCase: CaseFile): Told[] {
  const { entry: opened, furnace } = ofCase
  const next = casesOf(file, furnace.id).find((other) => other.at > opened.at && other.id !== opened.id)
  const isHere = ({ caseId }: { caseId?: string }) =>
    caseId !== undefined && file.keptId(caseId) === opened.id
  const isMeanwhile = (furnaceId: string | undefined, at: string) =>
    furnaceId !== undefined &&
    file.keptId(furnaceId) === furnace.id &&
    at >= opened.at &&
    (next === undefined || at < next.at)
  const isNotice = ({ body, at }: Entry<ShutDownNoticeBody>) =>
    body.caseId === undefined ? isMeanwhile(body.furnaceId, at) : isHere(body)

  const of = <Body extends { caseId?: string }>(entries: ReadonlyMap<string, Entry<Body>>) =>
    all(entries).filter(({ body }) => isHere(body))
  const readings = of(file.readings)
  const readingIds = new Set(readings.map(({ id }) => id))
  const notices = all(file.shutDownNotices).filter(isNotice)
  const noticeIds = new Set(notices.map(({ id }) => id))
  return [
    { kind: 'case' as const, entry: opened },
    ...as('visit', of(file.visits)),
    ...as('finding', of(file.findings)),
    ...judgedThen(file, { ...ofCase, readings }).map((judged) => ({
      kind: 'reading' as const,
      entry: judged.entry,
      judged,
    })),
    ...as('combustion test', of(file.combustionTests)),
    ...as('danger answer', of(file.dangerAnswers)),
    ...as(
      'found fitted',
      all(file.foundFitted).filter(({ body, at }) => isMeanwhile(body.furnaceId, at)),
    ),
    ...as('fitted part', of(file.fittedParts)),
    ...as('switch check', of(file.switchChecks)),
    ...as('repair', of(file.repairs)),
    ...as(
      'baseline',
      all(file.baselines).filter(({ body }) => readingIds.has(body.readingId)),
    ),
    ...as('ending', of(file.endings)),
    ...as('photo', of(file.photos)),
    ...as('shut-down notice', notices),
    ...as(
      'lifting',
      all(file.liftings).filter(({ body }) => noticeIds.has(body.noticeId)),
    ),
  ].sort(({ entry: one }, { entry: other }) =>
    one.at === other.at ? (one.id < other.id ? -1 : 1) : one.at < other.at ? -1 : 1,
  )
}

const as = <Kind extends string, Body>(kind: Kind, entries: readonly Entry<Body>[]) =>
  entries.map((entry) => ({ kind, entry }))

/** Every entry, withdrawn or not; a double of another is left to it. */
const all = <Body>(entries: ReadonlyMap<string, Entry<Body>>): Entry<Body>[] =>
  [...entries.values()].filter(({ sameAs }) => sameAs === undefined)
