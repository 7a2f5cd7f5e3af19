import type { CaseState, LookName } from '@/lib/core/guard'
import type { Comparison, Reading } from '@/lib/core/reading'
import { compared, frozen, inches, limit, rating, reading } from '../reading/made'

/** 1.10 in. w.c. held steady for a minute, contact open, against closes at 0.94 ± 0.05. */
export const clearing = (changed: Partial<Reading> = {}, value = 1.1): Comparison =>
  compared({
    reading: reading([value, value, value], changed),
    rating: rating({ closes: limit(0.94, 0.05) }),
  })

const looks = {
  termination: 'clear',
  intake: 'clear',
  ventSlopeAndWater: 'clear',
  drainAndTrap: 'clear',
  hose: 'clear',
  port: 'clear',
  inducerSoundAndVolts: 'clear',
  wiring: 'clear',
} as const satisfies Record<LookName, 'clear'>

/** Everything on record that lets a switch be blamed for not closing. All numbers and names are invented. */
export function complete(changed: Partial<CaseState> = {}): CaseState {
  return frozen({
    complaint: 'will not close',
    kind: 'one-port',
    looks,
    part: {
      fitted: 'QV-3310',
      factory: { partNumber: 'QV-3310', listedBy: 'current literature', listedWhere: 'parts sheet, page 4' },
      supersessions: [
        { from: 'QV-3310', to: 'QV-3355', setting: 'as before' },
        { from: 'QV-3355', to: 'QV-3402', setting: 'as before' },
      ],
    },
    rating: {
      level: 'Verified',
      action: 'closes',
      sources: ['factory switch label', 'distributor'],
      stageAndElevation: 'right',
    },
    gauge: { zeroed: true, uncertaintyKnown: true, calibration: 'current' },
    reading: { comparison: clearing(), byTeeAtTheSwitch: true },
    ...changed,
  } satisfies CaseState)
}

/** Nothing on record but the complaint. */
export function bare(complaint: CaseState['complaint']): CaseState {
  return frozen({
    complaint,
    kind: 'one-port',
    looks: {
      termination: 'not checked',
      intake: 'not checked',
      ventSlopeAndWater: 'not checked',
      drainAndTrap: 'not checked',
      hose: 'not checked',
      port: 'not checked',
      inducerSoundAndVolts: 'not checked',
      wiring: 'not checked',
    },
    part: { supersessions: [] },
  } satisfies CaseState)
}

export { inches }
