import { type Requirement, requirements } from '@/lib/core/guard'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { ratingSettings, setpointOf } from '../setpoint'
import { complaintsFor } from '../swaps/complaintsFor'
import { nothingOnRecord } from '../swaps/nothingOnRecord'
import { sceneBefore } from '../swaps/sceneBefore'
import { dangerCodesOf, unsuitableIn } from '../unsuitable'
import { type CaseFile, caseFileOf } from './caseFile'
import { dangersOf } from './dangers'
import { furnaceOfCase } from './furnaceSeen'
import { judgedNow } from './judgedCase'
import { observedIn } from './observed'
import { positionsOf } from './positionsToProve'
import type { SuspectView } from './suspectView'
import { replacementFor } from './switchCase'

/** The causes that lie in the switch itself. */
const switchCauses: readonly string[] = [
  'wrong-switch-fitted',
  'switch-drifted-or-leaking',
  'contacts-resistive',
  'switch-stuck-closed',
]

/**
 * What had to be on record before a switch may be named as the cause, and was not, in the order of the work; empty for
 * any other cause. Where the switch was replaced, by what stood just before that repair was recorded: what is read
 * afterwards is of another switch. Where it was not, by what stands now. With several switches, and several things it
 * may be blamed for, the list that comes nearest to complete.
 * @param file the case as far as its ending goes
 * @param now ISO 8601: ratings are taken as they stood then, where no switch was replaced
 */
export function missingToBlameSwitch(
  team: TeamFile,
  file: CaseFile,
  cause: string | undefined,
  now: string,
): Requirement[] {
  if (cause === undefined || !switchCauses.includes(cause)) return []
  const swap = file.repairs.findLast(({ body }) => body.switchReplaced === true)
  const moment = swap?.at ?? now
  const scene = swap === undefined ? team : sceneBefore(team, file.furnace.id, swap.at)
  const ofCase = swap === undefined ? file : caseFileOf(scene, file.entry.id)
  if (ofCase === undefined) return nothingOnRecord().missing
  const view = viewThen(scene, ofCase, moment)
  const replacedAt = swap?.body.positionId === undefined ? undefined : team.keptId(swap.body.positionId)
  const suspects = positionsOf(scene, ofCase).filter(
    ({ id }) => replacedAt === undefined || id === replacedAt,
  )
  const settings = ratingSettings(scene, moment)
  const lists = suspects.flatMap(({ id }) => {
    if (wasUnsuitable(scene, ofCase, id)) return [[]]
    const setpoint = setpointOf(scene, id, furnaceOfCase(ofCase), settings)
    if (setpoint === undefined) return []
    return complaintsFor(cause).map((complaint) => replacementFor(scene, view, setpoint, complaint).missing)
  })
  const nearest = lists.toSorted((one, other) => one.length - other.length)[0] ?? nothingOnRecord().missing
  return requirements.filter((each) => nearest.includes(each))
}

function viewThen(scene: TeamFile, file: CaseFile, moment: string): SuspectView {
  const judged = judgedNow(scene, file, moment)
  const { contradicted } = dangersOf(scene, file, judged)
  const findings = file.findings.filter(({ body }) => !contradicted.has(body.finding))
  return { file, judged, observed: observedIn(findings, judged) }
}

/** Something was on record as found fitted there that has to come out whatever it reads. */
const wasUnsuitable = (scene: TeamFile, { furnace }: CaseFile, positionId: string): boolean =>
  unsuitableIn(scene, furnace.id).some(
    ({ body }) =>
      body.positionId !== undefined &&
      scene.keptId(body.positionId) === positionId &&
      body.what !== 'jumper or bypass' &&
      (body.what === 'switch for another stage' || dangerCodesOf(scene, body).length > 0),
  )
