import { findingById } from '@/lib/catalogue/findings'
import { coAirFree, type Danger, type DangerCode, type DangerReadings, dangerIn } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import { givesAllClear } from '@/lib/records/kinds/dangerAnswer'
import type { FindingBody } from '@/lib/records/kinds/finding'
import type { FittedPartBody } from '@/lib/records/kinds/fittedPart'
import { dangerCodesOf, dangerCodesOfNumber } from '../unsuitable'
import type { CaseFile } from './caseFile'
import type { JudgedReading } from './judgedReading'
import { newestFindings } from './observed'
import { openSince, type Sighting } from './openSince'
import { switchSightings } from './switchDangers'
import { replacementsAt } from './switchParts'

/** The dangers of a case that are open now, and those of them that nobody has said anything about yet. */
export type CaseDangers = {
  open: Danger[]
  unanswered: Danger[]
  /** Findings that were ruled out by hand although something else on record shows the danger: they count as nothing. */
  contradicted: ReadonlySet<string>
}

/**
 * What is dangerous in a case by what stands now: the newest value of every finding, what the readings show of each
 * switch, the newest CO in room and flue, and the switches found fitted. A danger is closed by finding it gone, never
 * by time. Answering it (gas off, tagged, told) only lets the work of that visit go on: found anew, or on a later visit,
 * it has to be answered anew. CO that everybody had to leave for is gone only when it is measured low after the
 * all-clear.
 */
export function dangersOf(team: TeamFile, file: CaseFile, judged: readonly JudgedReading[]): CaseDangers {
  const since = new Map<DangerCode, string>()
  const besideFindings = new Set<DangerCode>()
  const otherSightings = [
    ...switchSightings(team, file, judged),
    roomSightings(file),
    flueSightings(file.combustionTests),
    ...fittedSightings(team, file),
    ...file.unsuitable.map(({ at, body }) => [
      { at, visitId: undefined, shows: dangerCodesOf(team, body), rulesOut: [] },
    ]),
  ]
  for (const ofOneThing of otherSightings)
    for (const [code] of openSince(ofOneThing)) besideFindings.add(code)
  for (const ofOneThing of [...findingSightings(file.findings), ...otherSightings])
    for (const [code, at] of openSince(ofOneThing)) if (at > (since.get(code) ?? '')) since.set(code, at)
  const open = dangerIn([...since.keys()], {})
  const thisVisit = file.visits.at(-1)?.entry.id
  const isAnswered = ({ code }: Danger): boolean =>
    file.dangerAnswers.some(
      ({ at, body }) => body.visitId === thisVisit && at >= since.get(code)! && body.dangers.includes(code),
    )
  return {
    open,
    unanswered: open.filter((danger) => !isAnswered(danger)),
    contradicted: contradictedBy(besideFindings, file.findings),
  }
}

/** The findings whose newest value says that a danger is not there which something else shows. */
function contradictedBy(
  shown: ReadonlySet<DangerCode>,
  findings: readonly Entry<FindingBody>[],
): ReadonlySet<string> {
  const ruledOut = [...newestFindings(findings)].filter(([id, { body }]) => {
    const danger = findingById(id)?.danger
    return danger !== undefined && body.value !== danger.value && shown.has(danger.code)
  })
  return new Set(ruledOut.map(([id]) => id))
}

/** What was said of each finding that can be a danger. */
function findingSightings(findings: readonly Entry<FindingBody>[]): Sighting[][] {
  const byFinding = new Map<string, Sighting[]>()
  for (const { at, body } of findings) {
    const danger = findingById(body.finding)?.danger
    if (danger === undefined) continue
    const is = body.value === danger.value
    const sighting = {
      at,
      visitId: body.visitId,
      shows: is ? [danger.code] : [],
      rulesOut: is ? [] : [danger.code],
    }
    byFinding.set(body.finding, [...(byFinding.get(body.finding) ?? []), sighting])
  }
  return [...byFinding.values()]
}

/**
 * The newest part number read off the switch of each position, where it is one that should not be in, unless another
 * switch went in since: general-purpose is what the part on file is, or what the words of the number say, whoever read
 * it and whatever was thought of it.
 */
export function unsuitableNumbers(
  team: TeamFile,
  { furnace, fittedParts }: Pick<CaseFile, 'furnace' | 'fittedParts'>,
): Entry<FittedPartBody>[] {
  const newest = new Map(fittedParts.map((entry) => [team.keptId(entry.body.positionId), entry]))
  return [...newest].flatMap(([positionId, entry]) => {
    const isReplaced = replacementsAt(team, furnace.id, positionId).some((repair) => repair.at > entry.at)
    return isReplaced || dangerCodesOfNumber(team, entry.body.printed).length === 0 ? [] : [entry]
  })
}

const fittedSightings = (team: TeamFile, file: CaseFile): Sighting[][] =>
  unsuitableNumbers(team, file).map(({ at, body }) => [
    { at, visitId: undefined, shows: dangerCodesOfNumber(team, body.printed), rulesOut: [] },
  ])

/**
 * CO in the room against the limit that the employer has set. A low value alone takes nothing back of a high one:
 * everybody had to leave, and only once the all-clear was given since does a value measured after it show that the
 * CO is gone.
 */
function roomSightings({ combustionTests, dangerAnswers }: CaseFile): Sighting[] {
  const code = 'room-co-above-limit'
  let highAt: string | undefined
  return combustionTests.flatMap(({ at, body: { visitId, roomCoPpm, roomCoLimitPpm } }): Sighting[] => {
    if (roomCoPpm === undefined || roomCoLimitPpm === undefined) return []
    const shows = codesOf({ roomCo: { ppm: roomCoPpm, employersLimitPpm: roomCoLimitPpm } })
    if (shows.length > 0) {
      highAt = at
      return [{ at, visitId, shows, rulesOut: [] }]
    }
    const isClear = dangerAnswers.some(
      (answer) =>
        highAt !== undefined &&
        answer.at >= highAt &&
        answer.at <= at &&
        answer.body.dangers.includes(code) &&
        givesAllClear(answer.body),
    )
    return isClear ? [{ at, visitId, shows: [], rulesOut: [code] }] : []
  })
}

/**
 * CO in the flue, air-free, against the limit typed with it or before it. Without any limit it is still held against
 * the one that no limit goes above, and watched for climbing; but then it shows nothing to be in order.
 */
function flueSightings(tests: readonly Entry<CombustionTestBody>[]): Sighting[] {
  let limit: number | undefined
  return tests.flatMap(({ at, body }): Sighting[] => {
    limit = body.flueCoLimitPpm ?? limit
    if (body.flueCoPpm.length === 0) return []
    const ppm = airFreeOf(body)
    const shows = codesOf({ flueCo: { ppm, limitPpm: limit ?? Number.MAX_VALUE } })
    const inOrder = [
      ...(limit === undefined ? [] : (['flue-co-high'] as const)),
      ...(isSteady(ppm) ? (['flue-co-climbing'] as const) : []),
    ]
    return [{ at, visitId: body.visitId, shows, rulesOut: inOrder.filter((code) => !shows.includes(code)) }]
  })
}

const codesOf = (readings: DangerReadings): DangerCode[] => dangerIn([], readings).map(({ code }) => code)

/** The flue's CO air-free, in the order of measuring; as it was shown where no oxygen was read. */
export const airFreeOf = ({ flueCoPpm, oxygenPercent }: { flueCoPpm: number[]; oxygenPercent?: number }) =>
  flueCoPpm.map((ppm) => (oxygenPercent === undefined ? ppm : coAirFree(ppm, oxygenPercent)))

/** Values no further apart than this are the analyser's own scatter, ppm (common practice, no published source). */
const steadyWithinPpm = 10

/** Two values or more that agree. */
export const isSteady = (ppm: readonly number[]): boolean =>
  ppm.length >= 2 && Math.max(...ppm) - Math.min(...ppm) <= steadyWithinPpm
