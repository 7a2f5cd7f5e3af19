import { dangerValueOf } from '@/lib/catalogue/findings'
import type { DangerCode } from '@/lib/core/guard'
import type { DangerAnswerBody } from '@/lib/records/kinds/dangerAnswer'
import { happens, pick } from '../drawing'
import { type Habit, habits } from './habits'
import type { House, Stage } from './houses'
import { looksOf, type Scene } from './looks'
import { asFoundCold, asFoundHot, isClosedAt, type Moment, pressureAt } from './pressure'
import type { Fault } from './trouble'
import type { Visit } from './visit'

/** What a visit has found that has to be dealt with. */
export type Found = {
  /** Findings that are dangers, as they were tapped. */
  dangers: { finding: string; code: DangerCode }[]
  /** The contact was found closed at rest, or with too little pressure: read again after the repair. */
  closedWrongly: boolean
}

/** Looks, taps and measures until the visit knows as much as this technician wants to know. */
export function findOut(visit: Visit, scene: Scene): Found {
  const habit = habits[visit.by]
  const dangers: Found['dangers'] = []
  for (const { finding, value } of looksOf(visit.random, habit, scene)) {
    visit.see(finding, value)
    const code = dangerValueOf(finding, value)
    if (code !== undefined) dangers.push({ finding, code })
  }
  if (dangers.some(({ code }) => code === 'flue-co-high')) testHighFlue(visit)
  if (dangers.length > 0)
    answer(
      visit,
      dangers.map(({ code }) => code),
    )
  const { faults } = scene.trouble
  measure(visit, habit, scene)
  readPart(visit, habit, scene.house)
  return { dangers, closedWrongly: faults.some(({ stuckClosed }) => stuckClosed) }
}

/** Writes down what was done at once about a danger. */
export function answer(visit: Visit, dangers: readonly DangerCode[]): void {
  const done: DangerAnswerBody['done'] = ['gas off', 'power off', 'tagged', 'occupant told']
  const { caseId, visitId } = visit
  visit.say('danger answer', { caseId, visitId, dangers: [...new Set(dangers)], done }, [0.5, 2])
}

function testHighFlue(visit: Visit): void {
  const rising = [212, 228, 231].map((ppm) => ppm + Math.floor(visit.random() * 60))
  visit.testCombustion({
    when: 'as found',
    roomCoPpm: Math.floor(visit.random() * 5),
    roomCoLimitPpm: roomCoLimitPpm,
    flueCoPpm: rising.sort((one, other) => one - other),
    ...flueLimitOf(visit.house),
    minutesRunning: 8,
    meter,
  })
}

/** The demo company's own limit for a room, ppm. Invented, like everything about it. */
export const roomCoLimitPpm = 9
export const meter = 'belt meter and the grey analyser'

/** CO air-free that the manual of a family allows: invented, one figure for each family. */
export const flueLimitOf = ({ range: { family } }: House) => ({
  flueCoLimitPpm: 90 + 5 * (family.name.length % 5),
  flueCoLimitFrom: `${family.name} installation manual, page ${30 + family.name.length}`,
  minutesAsked: 15,
})

function measure(visit: Visit, habit: Habit, scene: Scene): void {
  const { random } = visit
  const { house, trouble } = scene
  const { faults } = trouble
  const read = (
    stage: Stage,
    moment: Moment,
    phase: 'rest' | 'pre-purge' | 'after light-off' | 'steady hot',
  ) => visit.read({ ...moment, stage, faults, phase, when: 'as found' })
  const runs = (stage: Stage) => isClosedAt(stage, faults, pressureAt(stage, faults, asFoundCold), 'cold')
  const first = house.stages[0]!
  if (happens(random, habit.reads.atRest)) read(first, asFoundCold, 'rest')
  if (!happens(random, habit.reads.cold)) return
  const stages = house.stages.filter((_, at) => at === 0 || happens(random, 0.65))
  for (const stage of stages) read(stage, asFoundCold, 'pre-purge')
  if (runs(first) && happens(random, habit.reads.hot)) {
    for (const stage of stages) read(stage, asFoundHot, 'steady hot')
    if (trouble.main === 'primary-exchanger-cracked' && happens(random, habit.reads.splits)) {
      read(first, asFoundHot, 'after light-off')
      read(first, { ...asFoundHot, situation: 'air blower just started' }, 'after light-off')
    }
  }
  for (const moment of splitsOf(random, habit, scene, faults)) read(first, moment, 'pre-purge')
}

/** Which side of the air path is taken away while the gauge is watched: the right one if the trail leads there. */
function splitsOf(random: () => number, habit: Habit, scene: Scene, faults: readonly Fault[]): Moment[] {
  const moments: Moment[] = []
  const { house, suspected, trouble } = scene
  const side = faults[0]?.undoneBy
  if (side !== undefined && suspected.includes(trouble.main) && happens(random, habit.reads.splits))
    moments.push({ ...asFoundCold, situation: side })
  const others = [
    'vent opened' as const,
    ...(house.condensing ? (['after draining'] as const) : []),
    ...(house.airFrom === 'the room' ? (['window open'] as const) : (['intake off'] as const)),
  ].filter((situation) => situation !== side)
  if (happens(random, habit.reads.splits * 0.3))
    moments.push({ ...asFoundCold, situation: pick(random, others) })
  const isDoorSuspected = (faults[0]?.doorOff ?? 1) !== 1
  if (happens(random, isDoorSuspected ? habit.reads.splits : 0.04))
    moments.push({ ...asFoundCold, door: 'off' })
  return moments
}

function readPart(visit: Visit, habit: Habit, house: House): void {
  if (!happens(visit.random, habit.readsPart)) return
  const stage = pick(visit.random, house.stages)
  const { furnaceId, band, revision } = house
  const part = visit.team.factoryPartBy({ at: stage.at, by: 'piet', on: visit.on, band, revision })
  if (part === undefined) return
  const { positionId } = stage
  visit.say('fitted part', { furnaceId, positionId, caseId: visit.caseId, printed: part.number }, [1, 3])
}
