import { findingById } from '@/lib/catalogue/findings'
import { coAirFree, type Danger, type DangerCode, type DangerReadings, dangerIn } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { FindingBody } from '@/lib/records/kinds/finding'
import { dangerCodesOf, dangerCodesOfNumber } from '../unsuitable'
import type { CaseFile } from './caseFile'
import type { JudgedReading } from './judgedReading'
import { openSince, type Sighting } from './openSince'
import { switchSightings } from './switchDangers'
import { replacementsAt } from './switchParts'

/** The dangers of a case that are open now, and those of them that nobody has said anything about yet. */
export type CaseDangers = { open: Danger[]; unanswered: Danger[] }

/**
 * What is dangerous in a case by what stands now: the newest value of every finding, what the readings show of each
 * switch, the newest CO in room and flue, and the switches found fitted. A danger is closed by finding it gone, never
 * by time. Answering it (gas off, tagged, told) only lets the work of that visit go on: found anew, or on a later visit,
 * it has to be answered anew.
 */
export function dangersOf(team: TeamFile, file: CaseFile, judged: readonly JudgedReading[]): CaseDangers {
  const since = new Map<DangerCode, string>()
  const sightings = [
    ...findingSightings(file.findings),
    ...switchSightings(team, file, judged),
    roomSightings(file.combustionTests),
    flueSightings(file.combustionTests),
    ...fittedSightings(team, file),
    ...file.unsuitable.map(({ at, body }) => [
      { at, visitId: undefined, shows: dangerCodesOf(team, body), rulesOut: [] },
    ]),
  ]
  for (const ofOneThing of sightings)
    for (const [code, at] of openSince(ofOneThing)) if (at > (since.get(code) ?? '')) since.set(code, at)
  const open = dangerIn([...since.keys()], {})
  const thisVisit = file.visits.at(-1)?.entry.id
  const isAnswered = ({ code }: Danger): boolean =>
    file.dangerAnswers.some(
      ({ at, body }) => body.visitId === thisVisit && at >= since.get(code)! && body.dangers.includes(code),
    )
  return { open, unanswered: open.filter((danger) => !isAnswered(danger)) }
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
 * The newest part number read off the switch of each position, unless another switch went in since: general-purpose
 * is what the part on file is, whoever read it and whatever was thought of it.
 */
function fittedSightings(team: TeamFile, { furnace, fittedParts }: CaseFile): Sighting[][] {
  const newest = new Map(fittedParts.map((entry) => [team.keptId(entry.body.positionId), entry]))
  return [...newest].map(([positionId, { at, body }]) => {
    const isReplaced = replacementsAt(team, furnace.id, positionId).some((repair) => repair.at > at)
    const shows = isReplaced ? [] : dangerCodesOfNumber(team, body.printed)
    return [{ at, visitId: undefined, shows, rulesOut: [] }]
  })
}

/** CO in the room against the limit that the employer has set. */
const roomSightings = (tests: readonly Entry<CombustionTestBody>[]): Sighting[] =>
  tests.flatMap(({ at, body: { visitId, roomCoPpm, roomCoLimitPpm } }) => {
    if (roomCoPpm === undefined || roomCoLimitPpm === undefined) return []
    const shows = codesOf({ roomCo: { ppm: roomCoPpm, employersLimitPpm: roomCoLimitPpm } })
    return [{ at, visitId, shows, rulesOut: shows.length > 0 ? [] : ['room-co-above-limit'] }]
  })

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
