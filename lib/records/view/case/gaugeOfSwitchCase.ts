import type { CaseState } from '@/lib/core/guard'
import { gaugeHalfWidth, isCalibrationPast } from '@/lib/core/reading'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { SwitchCheckBody } from '@/lib/records/kinds/switchCheck'
import { gaugeThen } from './gaugeThen'
import { instrumentOf } from './instrument'
import type { JudgedReading } from './judgedReading'

/** How far the gauge of a reading can be relied on, as it stood that day: zeroed, of known accuracy, its calibration. */
export function gaugeOf(team: TeamFile, { entry }: JudgedReading): CaseState['gauge'] {
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

export const isPumpCheck = (check: Entry<SwitchCheckBody>): check is Entry<PumpCheck> =>
  check.body.what === 'off the furnace'

/** A gauge whose accuracy nobody knows may be off by anything: its pulls speak against no switch. */
export function offFurnaceOf(team: TeamFile, { body, at }: Entry<PumpCheck>): CaseState['offFurnace'] {
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
