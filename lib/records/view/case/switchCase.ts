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
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { Setpoint } from '../setpoint'
import { gaugeOf, isPumpCheck, offFurnaceOf } from './gaugeOfSwitchCase'
import { ofThisSwitch } from './ofThisSwitch'
import { suspectRating } from './suspectRating'
import { actionOf, suspectReading } from './suspectReading'
import type { SuspectView } from './suspectView'
import { isFactoryNumber, switchPartsOf } from './switchParts'

/**
 * Everything on record that bears on replacing the switch of one position, as the guard takes it. What was read or
 * tried before a repair, or before a fault of the air path was put right, is of another furnace, and left out.
 * @param setpoint of the suspected switch, for this very furnace
 */
export function switchCaseOf(
  team: TeamFile,
  view: SuspectView,
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
  const rating = suspectRating(complaint, view, setpoint, taken)
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
  view: SuspectView,
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
