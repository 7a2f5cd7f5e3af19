import { drawn, happens } from '../drawing'
import { type Belief, blamedSwitch } from './belief'
import type { Aftermath } from './callTypes'
import { closeRepaired, isBack, repair } from './closing'
import { findNoFault, waitForPart } from './endings'
import type { Found } from './findOut'
import { habits } from './habits'
import { factorySwitch, fitSwitch, mend, needsSwitch } from './mend'
import { asFoundHot } from './pressure'
import type { Fault, Trouble } from './trouble'
import type { Visit } from './visit'

/** The wrong cause is put right: sometimes the readings tell, and the right one is found after all. */
export function goWrong(visit: Visit, trouble: Trouble, belief: Belief, found: Found): Aftermath {
  const { random } = visit
  const minutes = Math.round(drawn(random, [25, 90]))
  const passesByItself = isRestless(trouble.faults) ? 0.6 : 0.12
  if (found.dangers.length === 0 && happens(random, passesByItself * 0.5)) {
    findNoFault(visit, minutes)
    return isBack(visit, 0.5)
  }
  const isSwap = belief.main === blamedSwitch && factorySwitch(visit, visit.house.stages[0]!) !== undefined
  if (isSwap) fitSwitch(visit, 'Switch replaced', Math.round(drawn(random, [20, 35])))
  else if (needsSwitch(belief.main)) {
    waitForPart(visit, belief, false, minutes)
    return isBack(visit, 1)
  } else mend(visit, belief.main)
  const left = happens(random, passesByItself) ? [] : trouble.faults
  const stays = happens(random, habits[visit.by].proves)
  if (stays && left.length > 0 && !isSwap && happens(random, 0.55)) {
    const stage = visit.house.stages[0]!
    visit.read({ ...asFoundHot, stage, faults: left, phase: 'steady hot', when: 'after repair' })
    repair(visit, trouble, { ...belief, isRight: true, main: trouble.main }, found, 'for good')
    return { until: visit.on }
  }
  closeRepaired(visit, belief, left, stays, minutes, found)
  return isBack(visit, left.length > 0 ? 0.85 : 0.55)
}

const isRestless = (faults: readonly Fault[]): boolean =>
  faults.some(({ moves }) => moves?.how === 'with the gusts')
