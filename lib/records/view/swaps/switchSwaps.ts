import type { SwitchSwap } from '@/lib/core/callbacks/unjustifiedSwitchSwaps'
import type { Complaint, Requirement } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { AnyRepairBody } from '@/lib/records/kinds/repair'
import { caseFileOf } from '../case/caseFile'
import { type CaseView, caseViewOf } from '../case/caseView'
import { replacementFor, switchCaseOf } from '../case/switchCase'
import { furnaceForRating } from '../furnaceForRating'
import { ofFurnace, oldestFirst } from '../ofFurnace'
import { ratingSettings, type Setpoint, setpointOf } from '../setpoint'
import { dangerCodesOf, unsuitableIn } from '../unsuitable'
import { complaintsFor, everyComplaint } from './complaintsFor'
import { nothingOnRecord } from './nothingOnRecord'
import { sceneBefore } from './sceneBefore'

/** A switch that was replaced, with what stood on record just before. */
export type SwapFacts = {
  repair: Entry<AnyRepairBody>
  furnace: Entry<FurnaceBody>
  /** Left out where the repair belongs to no case: then nothing was read or looked at. */
  caseId?: string
  /** Left out where nobody said which switch it was. */
  position?: Entry<PositionBody>
  /** The list that came nearest to complete, or that was complete. */
  complaint: Complaint
  /** What had to be on record and was not, in the order of the work. Empty when the replacement was justified. */
  missing: Requirement[]
  reading: SwitchSwap['reading']
  /** A reading after it, in service, at that switch: the same readings again show whether the cause is still there. */
  readAfterwards: boolean
}

const known = new WeakMap<TeamFile, readonly SwapFacts[]>()

/**
 * Every replacement of a switch, oldest first, each held against the records and ratings that stood just before the
 * repair was recorded: what is said later, and a rating that changes later, neither justifies nor condemns it.
 * A file never changes, so it is worked out once.
 */
export function switchSwapsIn(file: TeamFile): readonly SwapFacts[] {
  const steps = gatherSwaps(file)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The same, a replacement a step, so that a screen can go on answering meanwhile. */
export function* gatherSwaps(
  file: TeamFile,
): Generator<{ through: number; of: number }, readonly SwapFacts[]> {
  const before = known.get(file)
  if (before !== undefined) return before
  const repairs = counting(file.repairs)
    .filter(({ body }) => isSwap(body))
    .sort(oldestFirst)
  const swaps: SwapFacts[] = []
  for (const [through, repair] of repairs.entries()) {
    yield { through, of: repairs.length }
    const facts = factsOf(file, repair)
    if (facts !== undefined) swaps.push(facts)
  }
  known.set(file, swaps)
  return swaps
}

/** The first version of a repair does not say that a switch was replaced; a part fitted at a position says it. */
const isSwap = ({ switchReplaced, fittedPart, positionId }: AnyRepairBody): boolean =>
  switchReplaced ?? (fittedPart !== undefined && positionId !== undefined)

function factsOf(file: TeamFile, repair: Entry<AnyRepairBody>): SwapFacts | undefined {
  const caseId = repair.body.caseId === undefined ? undefined : file.keptId(repair.body.caseId)
  // Said while two furnaces were joined by mistake, a repair may name the other one: its case is on the right one.
  const ofCase = caseId === undefined ? undefined : file.cases.get(caseId)
  const furnace = file.furnaces.get(file.keptId(ofCase?.body.furnaceId ?? repair.body.furnaceId))
  if (furnace === undefined) return undefined
  const position = positionOf(file, repair.body)
  const about = {
    repair,
    furnace,
    ...(caseId === undefined ? {} : { caseId }),
    ...(position === undefined ? {} : { position }),
    readAfterwards: position !== undefined && isReadAfter(file, repair, position.id),
  }
  const scene = sceneBefore(file, furnace.id, repair.at)
  const view = caseId === undefined ? undefined : caseViewOf(scene, caseId, repair.at)
  const setpoint =
    position && setpointOf(scene, position.id, furnaceForRating(furnace), settingsOf(scene, repair.at))
  if (view === undefined || setpoint === undefined)
    return { ...about, ...nothingOnRecord(position?.body.kind), reading: 'none' }
  const reading = readingBefore(scene, view, setpoint)
  if (wasUnsuitable(scene, furnace.id, setpoint.position.id))
    return { ...about, complaint: 'wrong part fitted', missing: [], reading }
  return { ...about, ...nearest(scene, view, setpoint, causeNamed(file, caseId)), reading }
}

/** The position that a repair names, or else the only one that its part is listed for. */
function positionOf(file: TeamFile, { positionId, fittedPart }: AnyRepairBody) {
  const listed = fittedPart === undefined ? [] : (file.parts.get(fittedPart)?.body.positionIds ?? [])
  const id = positionId ?? (listed.length === 1 ? listed[0] : undefined)
  return id === undefined ? undefined : file.positions.get(file.keptId(id))
}

const settings = new WeakMap<TeamFile['reports'], ReturnType<typeof ratingSettings>>()

/** Scenes between which nothing of the whole team was said share their reports, and what was learnt of sources. */
function settingsOf(scene: TeamFile, now: string) {
  const learnt = settings.get(scene.reports) ?? ratingSettings(scene, now)
  settings.set(scene.reports, learnt)
  return { ...learnt, now }
}

/** Whether something was known to sit there that has to come out whatever it reads. */
const wasUnsuitable = (scene: TeamFile, furnaceId: string, positionId: string): boolean =>
  unsuitableIn(scene, furnaceId).some(
    ({ body }) =>
      body.positionId !== undefined &&
      scene.keptId(body.positionId) === positionId &&
      body.what !== 'jumper or bypass' &&
      (body.what === 'switch for another stage' || dangerCodesOf(scene, body).length > 0),
  )

function nearest(scene: TeamFile, view: CaseView, setpoint: Setpoint, cause: string | undefined) {
  const missingFor = (complaint: Complaint) => ({
    complaint,
    missing: replacementFor(scene, view, setpoint, complaint).missing,
  })
  const all = everyComplaint.map(missingFor)
  const justified = all.find(({ missing }) => missing.length === 0)
  if (justified !== undefined) return justified
  const asked = complaintsFor(cause)
  return all
    .filter(({ complaint }) => asked.includes(complaint))
    .toSorted((one, other) => one.missing.length - other.missing.length)[0]!
}

/** The main cause that the newest ending of the case names. */
const causeNamed = (file: TeamFile, caseId: string | undefined): string | undefined =>
  caseId === undefined
    ? undefined
    : caseViewOf(file, caseId)
        ?.file.visits.flatMap(({ endings }) => endings)
        .findLast(({ body }) => body.mainCause !== undefined)?.body.mainCause

/** What the reading that speaks of the switch said of whether it could close. */
function readingBefore(scene: TeamFile, view: CaseView, setpoint: Setpoint): SwitchSwap['reading'] {
  const { kind, reading } = switchCaseOf(scene, view, setpoint, 'will not close')
  const { start, run } = reading?.comparison ?? {}
  const judgement = [start, run].find((each) => each?.against === 'closes')
  if (judgement === undefined || kind === 'opens on rise') return 'none'
  return words[judgement.verdict]
}

const words = {
  'too low': 'too low to close it',
  enough: 'enough to close it',
  'too close to call': 'too close to call',
} as const

function isReadAfter(file: TeamFile, repair: Entry<AnyRepairBody>, positionId: string): boolean {
  const { caseId, furnaceId } = repair.body
  const readings =
    caseId === undefined
      ? ofFurnace(file, file.readings, furnaceId).filter(({ body }) => body.caseId === undefined)
      : (caseFileOf(file, caseId)?.readings ?? [])
  return readings.some(
    ({ at, body }) =>
      at > repair.at &&
      body.when === 'after repair' &&
      body.positionId !== undefined &&
      file.keptId(body.positionId) === positionId,
  )
}
