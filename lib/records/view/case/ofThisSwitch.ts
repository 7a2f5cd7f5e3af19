import { findingById } from '@/lib/catalogue/findings'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FindingBody } from '@/lib/records/kinds/finding'
import { ofFurnace } from '../ofFurnace'
import type { Setpoint } from '../setpoint'
import type { SuspectView } from './suspectView'

/**
 * The readings and checks of the case that are of the switch in this position and of the furnace as it is now: newer
 * than any repair, and than any fault of the air path that was found and is gone.
 */
export function ofThisSwitch(team: TeamFile, { file, judged }: SuspectView, { position }: Setpoint) {
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
