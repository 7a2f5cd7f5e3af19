import { happens, pick } from '../drawing'
import type { Call, CaseTelling } from './callTypes'
import type { House } from './houses'
import { asFoundCold, asFoundHot, pressureAt } from './pressure'
import type { Trouble } from './trouble'
import { complaints } from './words'

const rough: readonly string[] = [
  'intake-blocked',
  'gas-input-off',
  'primary-exchanger-sooted',
  'secondary-exchanger-restricted',
]

/** What the people in the house notice. */
function noticed(house: House, { main, faults }: Trouble): keyof typeof complaints {
  const stage = house.stages[0]!
  if (rough.includes(main)) return 'rough'
  if (pressureAt(stage, faults, asFoundCold) < stage.points.make) return 'cold'
  if (faults.some(({ moves }) => moves !== undefined)) return 'restless'
  return pressureAt(stage, faults, asFoundHot) < stage.points.break ? 'hot' : 'cold'
}

/** A dispatcher takes most calls; some are taken on the road. Answers the case's id. */
export function openCase({ team, random }: CaseTelling, { house, trouble, by, on }: Call): string {
  const desk = house.branch === 'Quarlfoot' ? ('piet' as const) : ('dunja' as const)
  const complaint = pick(random, complaints[noticed(house, trouble)])
  const body = { furnaceId: house.furnaceId, complaint, circuit: 'proving circuit' }
  return team.say({ kind: 'case', by: happens(random, 0.6) ? desk : by, on, body })
}
