import { findingById } from '@/lib/catalogue/findings'
import { demoDay } from '../book'
import { drawn, happens, workingDayAfter } from '../drawing'
import type { Belief } from './belief'
import type { Aftermath } from './callTypes'
import { namedCauses } from './endings'
import type { Found } from './findOut'
import { habits } from './habits'
import { isProvable, looksMended, mend, needsSwitch, proof, readAfter } from './mend'
import type { Fault, Trouble } from './trouble'
import { truthOf } from './truth'
import { takeOutBypass } from './unsuitable'
import { beginVisit, type Visit } from './visit'

/** A trouble that was not put right is back as often as said, within 30 days as a rule. */
export const isBack = ({ random, on }: Visit, likely: number): Aftermath =>
  happens(random, likely) ? { until: on, backAfter: 1 + Math.floor(34 * random() ** 1.4) } : { until: on }

/** A second visit on the same case, or none before the demo's end. */
export function comeAgain(visit: Visit, after: readonly [number, number], likely: number): Visit | undefined {
  const on = workingDayAfter(visit.on, Math.round(drawn(visit.random, after)), demoDay)
  if (on >= demoDay || !happens(visit.random, likely)) return undefined
  return beginVisit({ ...visit, on })
}

/** Puts the true cause right, and ends the visit. */
export function repair(
  visit: Visit,
  trouble: Trouble,
  belief: Belief,
  found: Found,
  how: 'for good' | 'in passing',
  beforeTheEnd: () => void = () => {},
): void {
  const { random } = visit
  mend(visit, trouble.main, how)
  if (
    trouble.contributing !== undefined &&
    how === 'for good' &&
    happens(random, 0.7) &&
    !needsSwitch(trouble.contributing)
  )
    mend(visit, trouble.contributing)
  takeOutBypass(visit, found)
  for (const { finding } of found.dangers) visit.see(finding, inOrder(finding))
  const stays = happens(random, habits[visit.by].proves)
  const minutes = Math.round(drawn(random, truthOf(trouble.main).minutes) + drawn(random, [30, 60]))
  closeRepaired(visit, belief, [], stays, minutes, found, beforeTheEnd)
}

/** The value at which a finding is no danger any more: ruled out, or else the good one, which stands first. */
const inOrder = (finding: string): string => {
  const values = findingById(finding)?.values ?? []
  return values.includes('ruled out') ? 'ruled out' : (values[0] ?? 'ruled out')
}

/**
 * Proves a repair, if whoever is there stays for it and the ratings on file allow it, and ends the visit.
 * @param left faults that still act
 */
export function closeRepaired(
  visit: Visit,
  belief: Belief,
  left: readonly Fault[],
  stays: boolean,
  minutes: number,
  found: Found,
  beforeTheEnd: () => void = () => {},
): void {
  const { random } = visit
  const named = namedCauses(random, belief)
  const claims = stays && looksMended(visit, left) && isProvable(visit)
  if (!claims) {
    if (stays && happens(random, 0.5)) readAfter(visit, left, found.closedWrongly)
    beforeTheEnd()
    visit.end({
      how: 'repaired, not proven',
      ...named,
      confirmingTest: belief.isRight ? 'confirmed' : 'not done',
      minutes,
    })
    return
  }
  const readingId = readAfter(visit, left, found.closedWrongly)
  if (belief.isRight && happens(random, 0.2)) {
    const { furnaceId } = visit.house
    visit.say('baseline', { furnaceId, readingId, occasion: 'after a proven repair', on: visit.on }, [0.5, 2])
  }
  beforeTheEnd()
  const confirmed = happens(random, belief.isRight ? 0.96 : 0.6)
  visit.end({
    how: 'repaired and proven',
    ...named,
    confirmingTest: confirmed ? 'confirmed' : 'not done',
    minutes,
    ...proof(visit),
  })
}
