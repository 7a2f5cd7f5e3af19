import { demoDay } from '../book'
import { drawn, happens, pick, workingDayAfter } from '../drawing'
import { type Belief, believe, blamedSwitch } from './belief'
import { decline, findNoFault, leaveOff, lift, namedCauses, waitForPart } from './endings'
import { type Found, findOut } from './findOut'
import { habits, type Technician } from './habits'
import type { House } from './houses'
import {
  factorySwitch,
  fitSwitch,
  isProvable,
  looksMended,
  mend,
  needsSwitch,
  proof,
  readAfter,
} from './mend'
import { openCase } from './openCase'
import type { RatingsThen } from './ratingsThen'
import type { Fault, Trouble } from './trouble'
import { truthOf } from './truth'
import { seeUnsuitable, takeOutBypass } from './unsuitable'
import { beginVisit, type Visit, type VisitSetting } from './visit'
import type { Day } from './weather'
import { visitNotes } from './words'

/** What the demo's cases are told with. */
export type CaseTelling = {
  team: VisitSetting['team']
  random: () => number
  ratings: RatingsThen
  weatherOn: (branch: House['branch'], on: string) => Day
}

/** A furnace stops, and somebody goes there. */
export type Call = {
  house: House
  trouble: Trouble
  by: Technician
  on: string
  /** The furnace was seen to within the last 30 days, and not mended. */
  isRepeat: boolean
}

/** What is left of a case: until when it was worked on, after how many days the trouble is back, or that it stays off. */
export type Aftermath = { until: string; backAfter?: number; staysOff?: true }

/** From this day on a visit may not be over yet. */
const stillWorkedOnFrom = '2026-11-18'

/** Tells one case from the call to its last ending. */
export function tellCase(telling: CaseTelling, call: Call): Aftermath {
  const { random } = telling
  const { house, trouble, by, on } = call
  const day = telling.weatherOn(house.branch, on)
  const belief = believe(random, habits[by], call, day)
  const caseId = openCase(telling, call)
  const setting = { ...telling, house, caseId, by, on }
  const visit = beginVisit(setting, {
    ...(happens(random, 0.5) ? { weather: day.words } : {}),
    ...(happens(random, 0.1) ? { note: pick(random, visitNotes) } : {}),
  })
  const found = findOut(visit, { house, trouble, day, suspected: belief.suspected, isRepeat: call.isRepeat })
  if (on >= stillWorkedOnFrom && happens(random, 0.7)) return { until: demoDay }
  if (belief.isRight) found.dangers.push(...seeUnsuitable(visit, trouble, found))
  return belief.isRight
    ? goRight(visit, trouble, belief, found, call.isRepeat)
    : goWrong(visit, trouble, belief, found)
}

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

function goRight(visit: Visit, trouble: Trouble, belief: Belief, found: Found, isRepeat: boolean): Aftermath {
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

/** The wrong cause is put right: sometimes the readings tell, and the right one is found after all. */
function goWrong(visit: Visit, trouble: Trouble, belief: Belief, found: Found): Aftermath {
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
    for (const stage of visit.house.stages.slice(0, 1))
      visit.read({
        stage,
        faults: left,
        temperature: 'hot',
        situation: 'as found',
        door: 'on',
        phase: 'steady hot',
        when: 'after repair',
      })
    repair(visit, trouble, { ...belief, isRight: true, main: trouble.main }, found, 'for good')
    return { until: visit.on }
  }
  closeRepaired(visit, belief, left, stays, minutes, found)
  return isBack(visit, left.length > 0 ? 0.85 : 0.55)
}

const isRestless = (faults: readonly Fault[]): boolean =>
  faults.some(({ moves }) => moves?.how === 'with the gusts')

/** A trouble that was not put right is back as often as said, within 30 days as a rule. */
const isBack = ({ random, on }: Visit, likely: number): Aftermath =>
  happens(random, likely) ? { until: on, backAfter: 1 + Math.floor(34 * random() ** 1.4) } : { until: on }

/** A second visit on the same case, or none before the demo's end. */
function comeAgain(visit: Visit, after: readonly [number, number], likely: number): Visit | undefined {
  const on = workingDayAfter(visit.on, Math.round(drawn(visit.random, after)), demoDay)
  if (on >= demoDay || !happens(visit.random, likely)) return undefined
  return beginVisit({ ...visit, on })
}

function repair(
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
  for (const { finding } of found.dangers) visit.see(finding, 'ruled out')
  const stays = happens(random, habits[visit.by].proves)
  const minutes = Math.round(drawn(random, truthOf(trouble.main).minutes) + drawn(random, [30, 60]))
  closeRepaired(visit, belief, [], stays, minutes, found, beforeTheEnd)
}

function closeRepaired(
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
