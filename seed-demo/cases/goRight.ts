import { demoDay } from '../book'
import { drawn, happens } from '../drawing'
import type { Belief } from './belief'
import type { Aftermath } from './callTypes'
import { comeAgain, isBack, repair } from './closing'
import { decline, findNoFault, leaveOff, lift, waitForPart } from './endings'
import type { Found } from './findOut'
import { needsSwitch } from './mend'
import type { Trouble } from './trouble'
import { truthOf } from './truth'
import type { Visit } from './visit'

/** What is expensive, or somebody else's to decide, is declined now and then. */
const oftenDeclined: readonly string[] = [
  'secondary-exchanger-restricted',
  'vent-over-length',
  'starved-room',
]

/** Cannot be put right on the day it is found, whatever is on the van. */
const neverToday: readonly string[] = ['primary-exchanger-cracked', 'primary-exchanger-sooted']

/** Another furnace is put in by others, and this one stays off. */
const neverMended: readonly string[] = ['primary-exchanger-cracked']

/** The true cause is named, and the visit ends in whatever way that leads to. */
export function goRight(
  visit: Visit,
  trouble: Trouble,
  belief: Belief,
  found: Found,
  isRepeat: boolean,
): Aftermath {
  const { random } = visit
  const truth = truthOf(trouble.main)
  const minutes = Math.round(drawn(random, [25, 80]))
  const codes = found.dangers.map(({ code }) => code)
  if (codes.length === 0 && happens(random, oftenDeclined.includes(trouble.main) ? 0.18 : 0.012)) {
    decline(visit, belief, minutes)
    return isBack(visit, 0.3)
  }
  if (codes.length === 0 && happens(random, 0.02)) {
    findNoFault(visit, minutes)
    return isBack(visit, 0.6)
  }
  const lacksPart = neverToday.includes(trouble.main) || happens(random, truth.ordered ?? 0)
  if (codes.length > 0 && (lacksPart || happens(random, 0.35))) {
    const noticeId = leaveOff(visit, happens(random, 0.8) ? belief : undefined, codes, minutes)
    const next = comeAgain(visit, [1, 9], neverMended.includes(trouble.main) ? 0 : 0.9)
    if (next === undefined) return { until: demoDay, staysOff: true }
    repair(next, trouble, belief, found, 'for good', () => lift(next, noticeId))
    return { until: next.on }
  }
  if (lacksPart) {
    waitForPart(visit, belief, needsSwitch(trouble.main), minutes)
    const next = comeAgain(visit, [1, 8], 0.93)
    if (next === undefined) return isBack(visit, 0.5)
    repair(next, trouble, belief, found, 'for good')
    return { until: next.on }
  }
  const passes = truth.passing !== undefined && happens(random, truth.passing.chance * (isRepeat ? 0.25 : 1))
  repair(visit, trouble, belief, found, passes ? 'in passing' : 'for good')
  return isBack(visit, passes ? 0.72 : 0)
}
