import { type CallbackCase, casesByFurnace } from '@/lib/core/callbacks/cases'
import { type WatchEnd, watchEndsByFurnace } from '@/lib/core/callbacks/timeToCallback'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody, EndingWay } from '@/lib/records/kinds/ending'
import { type CaseFile, caseFileOf } from '../case/caseFile'
import { judgedThen } from '../case/judgedCase'
import { isProven, namingsIn } from '../case/namings'
import { minutesOf } from './minutesOf'
import { type PartUsed, partsUsed } from './partsUsed'
import { type Remedy, remedyOf } from './remedy'
import { touchedFurnaces } from './touchedFurnaces'

/** One case as far as the figures need it, worked out once for a team file: a case as the core counts it, and more. */
export type CaseFacts = CallbackCase & {
  branch?: string
  rangeId?: string
  /**
   * How its last visit ended, and who said so; left out while nobody ended it, and while two endings stand side by
   * side. What claims proof and lacks something stands as not proven.
   */
  ended?: { at: number; how: EndingWay; by: string }
  /** Why its ending is not taken as it was said. */
  trouble?: 'endings disagree' | 'proof lacks something'
  remedy: Remedy
  readBefore: boolean
  readAfter: boolean
  /** Of work, over all visits; left out where nobody said any. */
  minutes?: number
  parts: readonly PartUsed[]
}

/** Everything that the figures are made of, by furnace: its cases oldest first, and what else ends its watching. */
export type TeamFacts = readonly FurnaceFacts[]
export type FurnaceFacts = { cases: readonly CaseFacts[]; watchEnds: readonly WatchEnd[] }

/** @param cases in any order, each once */
export function teamFactsOf(cases: readonly CaseFacts[], watchEnds: readonly WatchEnd[]): TeamFacts {
  const ends = watchEndsByFurnace(watchEnds)
  return [...casesByFurnace(cases)].map(([furnaceId, ofOneFurnace]) => ({
    cases: ofOneFurnace,
    watchEnds: ends.get(furnaceId) ?? [],
  }))
}

const known = new WeakMap<TeamFile, TeamFacts>()

/** The facts of a whole team file, worked out when they are first asked for. */
export function teamFacts(file: TeamFile): TeamFacts {
  const steps = gatherFacts(file)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The same without the furnaces: every case that counts. */
export const casesOfTeam = (file: TeamFile): CaseFacts[] => teamFacts(file).flatMap(({ cases }) => cases)

/** How many cases are through. */
export type FactsProgress = { through: number; of: number }

/** A team file and the facts that were gathered from it. */
export type Gathered = { file: TeamFile; facts: TeamFacts }

/** What was gathered last. A new record makes a new team file, but most facts are the same in it. */
let last: Gathered | undefined

/** The same, a case a step, so that a screen can go on answering meanwhile. */
export function* gatherFacts(file: TeamFile): Generator<FactsProgress, TeamFacts> {
  const before = known.get(file)
  if (before !== undefined) return before
  const facts = yield* gatherSince(last, file)
  known.set(file, facts)
  last = { file, facts }
  return facts
}

/** The same; cases of furnaces that nothing was done to since another gathering keep the facts of then. */
export function* gatherSince(
  before: Gathered | undefined,
  file: TeamFile,
): Generator<FactsProgress, TeamFacts> {
  const entries = counting(file.cases)
  const kept =
    before === undefined ? new Map<string, CaseFacts>() : yield* keptFacts(before, file, entries.length)
  const cases: CaseFacts[] = []
  for (const [place, { id }] of entries.entries()) {
    yield { through: place, of: entries.length }
    const ofCase = kept.has(id) ? undefined : caseFileOf(file, id)
    const facts = ofCase === undefined ? kept.get(id) : factsOf(file, ofCase)
    if (facts !== undefined) cases.push(facts)
  }
  return teamFactsOf(cases, watchEndsIn(file))
}

/** The facts that still hold, by the ids of their cases. */
function* keptFacts(
  before: Gathered,
  file: TeamFile,
  of: number,
): Generator<FactsProgress, ReadonlyMap<string, CaseFacts>> {
  const comparing = touchedFurnaces(before.file, file)
  let step = comparing.next()
  for (; !step.done; step = comparing.next()) yield { through: 0, of }
  const touched = step.value
  if (touched === 'any') return new Map()
  const untouched = before.facts
    .flatMap(({ cases }) => cases)
    .filter(({ furnaceId }) => !touched.has(furnaceId))
  return new Map(untouched.map((one) => [one.id, one]))
}

function factsOf(team: TeamFile, file: CaseFile): CaseFacts {
  const { entry, furnace, visits, readings } = file
  const { branch, rangeId } = furnace.body
  const cause = causeNamed(file)
  const minutes = minutesOf(file)
  return {
    id: entry.id,
    furnaceId: furnace.id,
    ...(branch === undefined ? {} : { branch }),
    ...(rangeId === undefined ? {} : { rangeId: team.keptId(rangeId) }),
    circuit: entry.body.circuit,
    openedAt: Date.parse(entry.at),
    ...endedAs(team, file, visits.at(-1)?.endings ?? []),
    ...(cause === undefined ? {} : { cause }),
    remedy: remedyOf(file),
    readBefore: readings.some(({ body }) => body.when === 'as found'),
    readAfter: readings.some(({ body }) => body.when === 'after repair'),
    ...(minutes === undefined ? {} : { minutes }),
    parts: partsUsed(team, file),
  }
}

/** How a case ended, by the endings of its last visit. */
function endedAs(
  team: TeamFile,
  file: CaseFile,
  endings: readonly Entry<EndingBody>[],
): Pick<CaseFacts, 'ended' | 'trouble'> {
  const [ending, other] = endings
  if (ending === undefined) return {}
  if (other !== undefined) return { trouble: 'endings disagree' }
  const ended = { at: Date.parse(ending.at), how: ending.body.how, by: ending.by }
  if (ended.how !== 'repaired and proven') return { ended }
  // Only what claims proof is judged: that takes longer than everything else together.
  return isProven(team, { file, judgedThatDay: judgedThen(team, file) }, ending)
    ? { ended }
    : { ended: { ...ended, how: 'repaired, not proven' }, trouble: 'proof lacks something' }
}

function causeNamed(file: CaseFile): string | undefined {
  const naming = namingsIn(file).at(-1)?.ending
  return naming === undefined || naming === 'disagreement' ? undefined : naming.body.mainCause
}

/** Furnaces that another took the place of, and shut-down notices, which can be of no case. */
function watchEndsIn(file: TeamFile): WatchEnd[] {
  const replaced = counting(file.furnaces).flatMap(({ at, body: { replaces } }) =>
    replaces === undefined
      ? []
      : [{ furnaceId: file.keptId(replaces), at: Date.parse(at), endedBy: 'furnace replaced' as const }],
  )
  const leftOff = counting(file.shutDownNotices).map(({ at, body }) => ({
    furnaceId: file.keptId(body.furnaceId),
    at: Date.parse(at),
    endedBy: 'left off' as const,
  }))
  return [...replaced, ...leftOff]
}
