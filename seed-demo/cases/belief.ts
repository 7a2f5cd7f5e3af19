import { happens, pickWeighted } from '../drawing'
import type { Habit } from './habits'
import type { House } from './houses'
import { likelihood, type Trouble } from './trouble'
import { trueCauses } from './truth'
import { trailOf } from './truth/trails'
import type { Day } from './weather'

/** What a technician makes of a case. */
export type Belief = {
  isRight: boolean
  main: string
  contributing: string | undefined
  /** Causes whose trail was followed. */
  suspected: readonly string[]
}

/** Causes that even good people miss. */
const hardToName: readonly string[] = [
  'vent-over-length',
  'secondary-exchanger-restricted',
  'control-fault',
  'wind-at-vent-end',
  'exhaust-into-intake',
  'intake-pipe-fault',
  'gas-input-off',
  'cabinet-leak',
  'restrictor-wrong',
]

/** By then the team had talked about swapped switches; fewer were. */
const talkedAboutSwitches = '2024-10-01'

export function believe(
  random: () => number,
  habit: Habit,
  { house, trouble, isRepeat }: { house: House; trouble: Trouble; isRepeat: boolean },
  day: Day,
): Belief {
  const chance = habit.right + (isRepeat ? 0.06 : 0) - (hardToName.includes(trouble.main) ? 0.2 : 0)
  const isRight = happens(random, chance)
  const wrong = wronglyNamed(random, habit, house, trouble, day)
  const alsoSuspected = happens(random, 0.3) ? [wrong] : []
  if (!isRight) return { isRight, main: wrong, contributing: undefined, suspected: [wrong] }
  const contributing =
    trouble.contributing !== undefined && happens(random, 0.65) ? trouble.contributing : undefined
  const isSwapped = contributing !== undefined && happens(random, 0.15)
  return {
    isRight,
    main: isSwapped ? contributing : trouble.main,
    contributing: isSwapped ? trouble.main : contributing,
    suspected: [trouble.main, ...alsoSuspected],
  }
}

function wronglyNamed(random: () => number, habit: Habit, house: House, { main }: Trouble, day: Day): string {
  const blames = habit.blamesSwitch * (day.on < talkedAboutSwitches ? 1 : 0.35)
  if (main !== blamedSwitch && happens(random, blames)) return blamedSwitch
  const others = Object.keys(trueCauses).filter((cause) => cause !== main)
  return pickWeighted(
    random,
    others,
    (cause) => likelihood(cause, house, day) * (looksLike(cause, main) ? 3 : 1),
  )
}

/** What a swapped switch is written down as. */
export const blamedSwitch = 'switch-drifted-or-leaking'

/** Both show themselves by the same finding. */
const looksLike = (one: string, other: string): boolean =>
  [...trailOf(one)].some((id) => trailOf(other).has(id))
