import { findingById } from '@/lib/catalogue/findings'
import { looksFromFindings } from '@/lib/catalogue/findings/looksFromFindings'
import {
  type CaseState,
  type Complaint,
  lookNames,
  type Replacement,
  type Requirement,
  requirements,
  switchReplacement,
} from '@/lib/core/guard'
import { gaugeHalfWidth, isCalibrationPast } from '@/lib/core/reading'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FindingBody } from '@/lib/records/kinds/finding'
import type { SwitchCheckBody } from '@/lib/records/kinds/switchCheck'
import { ofFurnace } from '../ofFurnace'
import type { Setpoint } from '../setpoint'
import type { CaseView } from './caseView'
import { inServiceSituations } from './expectedAt'
import { gaugeThen } from './gaugeThen'
import { instrumentOf } from './instrument'
import type { JudgedReading } from './judgedReading'
import { isFactoryNumber, switchPartsOf } from './switchParts'

/**
 * Everything on record that bears on replacing the switch of one position, as the guard takes it. What was read or
 * tried before a repair, or before a fault of the air path was put right, is of another furnace, and left out.
 * @param setpoint of the suspected switch, for this very furnace
 */
export function switchCaseOf(
  team: TeamFile,
  view: CaseView,
  setpoint: Setpoint,
  complaint: Complaint,
): CaseState {
  const { kind } = setpoint.position.body
  const of = ofThisSwitch(team, view, setpoint)
  const taken = suspectReading(of.judged, actionOf(complaint, kind))
  const checks = of.checks.map(({ body }) => body)
  const offFurnace = of.checks.findLast(isPumpCheck)
  const atRest = checks.findLast((check) => check.what === 'at rest')
  const drop = checks.findLast((check) => check.what === 'voltage across the closed contact')
  const rating = ratingOf(complaint, view, setpoint, taken)
  return {
    complaint,
    kind,
    looks: looksFromFindings(view.observed),
    part: switchPartsOf(team, view.file, setpoint),
    ...(rating === undefined ? {} : { rating }),
    ...(taken === undefined ? {} : { gauge: gaugeOf(team, taken) }),
    ...(taken?.comparison.ok
      ? {
          reading: {
            comparison: taken.comparison.value,
            byTeeAtTheSwitch: taken.entry.body.byTeeAtTheSwitch,
          },
        }
      : {}),
    ...(offFurnace === undefined ? {} : { offFurnace: offFurnaceOf(team, offFurnace) }),
    ...(atRest === undefined ? {} : { atRest }),
    ...(drop === undefined ? {} : { drop }),
  }
}

/**
 * Whether replacing the switch is advised, what is still missing, and the factory part to order. A number that is no
 * factory part's on file is never named, whatever a chain of part numbers leads to.
 */
export function replacementFor(
  team: TeamFile,
  view: CaseView,
  setpoint: Setpoint,
  complaint: Complaint,
): Replacement {
  const { orderPart, through, setting, ...answer } = switchReplacement(
    switchCaseOf(team, view, setpoint, complaint),
  )
  if (orderPart === undefined) return answer
  return isFactoryNumber(team, orderPart)
    ? { ...answer, orderPart, through, setting }
    : { ...answer, advised: false, missing: ['supersession-settled'] }
}

/** Everything that has to be on record for a complaint, in the order of the work, with what is missing beside it. */
export function everyRequirement(
  setpoint: Setpoint,
  complaint: Complaint,
  missing: readonly Requirement[],
): Requirement[] {
  const nothing = Object.fromEntries(lookNames.map((look) => [look, 'not checked'])) as CaseState['looks']
  const bare = switchReplacement({
    complaint,
    kind: setpoint.position.body.kind,
    looks: nothing,
    part: { supersessions: [] },
  })
  return requirements.filter((each) => bare.missing.includes(each) || missing.includes(each))
}

/**
 * The readings and checks of the case that are of the switch in this position and of the furnace as it is now: newer
 * than any repair, and than any fault of the air path that was found and is gone.
 */
function ofThisSwitch(team: TeamFile, { file, judged }: CaseView, { position }: Setpoint) {
  const changedAt = [
    ...ofFurnace(team, team.repairs, file.furnace.id).map(({ at }) => at),
    ...faultsGoneAt(file.findings),
  ].sort()
  const lastChange = changedAt.at(-1)
  const isOfIt = (positionId: string | undefined, { at }: Entry<unknown>): boolean =>
    positionId === position.id && (lastChange === undefined || at > lastChange)
  return {
    judged: judged.filter(({ entry, positionId }) => isOfIt(positionId, entry)),
    checks: file.switchChecks.filter((check) => isOfIt(team.keptId(check.body.positionId), check)),
  }
}

/** When something that a look had found wrong was found in order again. */
function faultsGoneAt(findings: readonly Entry<FindingBody>[]): string[] {
  const faulty = new Set<string>()
  return findings.flatMap(({ at, body }) => {
    if (findingById(body.finding)?.proves?.whenValue[body.value] === 'fault found') faulty.add(body.finding)
    else if (faulty.delete(body.finding)) return [at]
    return []
  })
}

/** The action that a complaint is about; none where it is blamed as the wrong part. */
function actionOf(complaint: Complaint, kind: CaseState['kind']): 'closes' | 'opens' | undefined {
  switch (complaint) {
    case 'will not close':
      return 'closes'
    case 'opens early':
    case 'will not open':
      return 'opens'
    case 'drops voltage when closed':
      return kind === 'opens on rise' ? 'opens' : 'closes'
    case 'wrong part fitted':
      return undefined
  }
}

/**
 * The newest reading that speaks of the switch: nothing changed for it, and held against the action that the complaint
 * is about, whether it was called as found or after the repair; where none was, the newest that could be held against
 * anything, or else the newest.
 */
function suspectReading(judged: readonly JudgedReading[], action: 'closes' | 'opens' | undefined) {
  const fit = judged.filter(({ entry }) => inServiceSituations.includes(entry.body.situation))
  const heldAgainst = ({ comparison }: JudgedReading): boolean =>
    comparison.ok &&
    [comparison.value.start, comparison.value.run].some((judgement) => judgement?.against === action)
  return fit.findLast(heldAgainst) ?? fit.findLast(({ comparison }) => comparison.ok) ?? fit.at(-1)
}

function ratingOf(
  complaint: Complaint,
  view: CaseView,
  setpoint: Setpoint,
  reading: JudgedReading | undefined,
): CaseState['rating'] {
  const asked = actionOf(complaint, setpoint.position.body.kind)
  const { rating } = setpoint
  if (asked === undefined) return undefined
  const action =
    rating[asked].level === 'Not on file' && rating.unstated.level !== 'Not on file' ? 'not stated' : asked
  const standing = action === 'not stated' ? rating.unstated : rating[action]
  if (standing.level === 'Not on file') return undefined
  return {
    level: standing.level,
    action,
    sources: standing.sources.map(({ source }) => source),
    stageAndElevation: stageAndElevation(standing.stage, view, setpoint, reading),
  }
}

/** Whether the rating holds for the stage that was read and the height at which the furnace stands. */
function stageAndElevation(
  statedStage: Setpoint['rating']['closes']['stage'],
  { file }: CaseView,
  { rating, reports, position }: Setpoint,
  reading: JudgedReading | undefined,
): NonNullable<CaseState['rating']>['stageAndElevation'] {
  const ratedStage = statedStage === 'not stated' ? position.body.stage : statedStage
  const readStage = reading?.entry.body.stage
  if (readStage === undefined || ratedStage === 'not stated') return 'not checked'
  if (readStage !== ratedStage) return readStage === 'not stated' ? 'not checked' : 'wrong'
  const hasBand = [...reports.values()].some(({ body }) => body.elevationBand !== undefined)
  const heightKnown = !hasBand || file.furnace.body.elevationMetres !== undefined
  return heightKnown && rating.asks.length === 0 ? 'right' : 'not checked'
}

function gaugeOf(team: TeamFile, { entry }: JudgedReading): CaseState['gauge'] {
  const { gaugeId, zeroed } = entry.body
  const gauge = gaugeThen(team, gaugeId, entry.at)?.body
  const due = gauge?.calibrationDue
  return {
    zeroed,
    uncertaintyKnown: gauge !== undefined && !gaugeHalfWidth(instrumentOf(gauge, zeroed), 0).assumed,
    calibration: due === undefined ? 'not known' : isCalibrationPast(due, entry.at) ? 'past' : 'current',
  }
}

type PumpCheck = Extract<SwitchCheckBody, { what: 'off the furnace' }>

const isPumpCheck = (check: Entry<SwitchCheckBody>): check is Entry<PumpCheck> =>
  check.body.what === 'off the furnace'

/** A gauge whose accuracy nobody knows may be off by anything: its pulls speak against no switch. */
function offFurnaceOf(team: TeamFile, { body, at }: Entry<PumpCheck>): CaseState['offFurnace'] {
  const { pulls, gaugeId, heldForTenSeconds, pumpLineProvenTight } = body
  const gauge = gaugeThen(team, gaugeId, at)?.body
  const highest = Math.max(0, ...pulls.filter((pull) => pull !== 'did not close'))
  const { pascals, assumed } =
    gauge === undefined ? { pascals: 0, assumed: true } : gaugeHalfWidth(instrumentOf(gauge, true), highest)
  return {
    pulls,
    gaugeHalfWidthPascals: assumed ? Number.POSITIVE_INFINITY : pascals,
    heldForTenSeconds,
    pumpLineProvenTight,
  }
}
