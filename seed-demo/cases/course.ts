import { demoDay } from '../book'
import { happens, pick } from '../drawing'
import { believe } from './belief'
import type { Aftermath, Call, CaseTelling } from './callTypes'
import { findOut } from './findOut'
import { goRight } from './goRight'
import { goWrong } from './goWrong'
import { habits } from './habits'
import { openCase } from './openCase'
import { seeUnsuitable } from './unsuitable'
import { beginVisit } from './visit'
import { visitNotes } from './words'

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
