import { toPascals } from '@/lib/core/pressure'
import type { EndingBody } from '@/lib/records/kinds/ending'
import { putBackItems } from '@/lib/records/putBackItems'
import { drawn, happens, pick, workingDayBefore } from '../drawing'
import type { Part } from '../team'
import { flueLimitOf, meter, roomCoLimitPpm } from './findOut'
import type { Stage } from './houses'
import { asFoundCold, asFoundHot, pressureAt } from './pressure'
import type { Fault } from './trouble'
import { truthOf } from './truth'
import type { Visit } from './visit'

/** Causes that are put right by fitting the factory switch. */
const switchCauses: readonly string[] = [
  'wrong-switch-fitted',
  'switch-drifted-or-leaking',
  'contacts-resistive',
  'switch-stuck-closed',
  'elevation-kit-missing',
  'elevation-kit-not-called-for',
]

export const needsSwitch = (cause: string): boolean => switchCauses.includes(cause)

/** The factory switch of a stage, as the parts lists had it the day before; undefined where it was listed later. */
export function factorySwitch(
  { team, house, on }: Pick<Visit, 'team' | 'house' | 'on'>,
  stage: Stage,
): Part | undefined {
  const { band, revision } = house
  return team.factoryPartBy({ at: stage.at, by: 'piet', on: workingDayBefore(on), band, revision })
}

/** What was done, by the cause that somebody believes in: for good, or only its consequence. */
export function mend(visit: Visit, cause: string, how: 'for good' | 'in passing' = 'for good'): string[] {
  const { random } = visit
  const { mended, passing, parts, minutes } = truthOf(cause)
  const took = Math.round(drawn(random, minutes))
  const pause = [took * 0.6, took] as const
  if (needsSwitch(cause) && how === 'for good') return [fitSwitch(visit, pick(random, mended), took)]
  const done = pick(random, how === 'in passing' ? (passing?.done ?? mended) : mended)
  const used =
    how === 'for good' && parts !== undefined && happens(random, 0.75) ? pick(random, parts) : undefined
  return [
    visit.repair(
      { done, switchReplaced: false, ...(used === undefined ? {} : { parts: used }), minutes: took },
      pause,
    ),
  ]
}

/** @throws RangeError where the parts lists did not have the switch yet: ask factorySwitch first */
export function fitSwitch(visit: Visit, done: string, minutes: number): string {
  const stage = visit.house.stages[0]!
  const part = factorySwitch(visit, stage)
  if (part === undefined)
    throw new RangeError(`The demo fits a switch at ${stage.at} that nobody has listed yet`)
  const body = { done, positionId: stage.positionId, fittedPart: part.id, switchReplaced: true, minutes }
  return visit.repair(body, [minutes * 0.6, minutes])
}

/** Whether readings of a day can prove a repair at all: every air switch has an opening point on file, out of dispute. */
export const isProvable = ({ ratings, house, on }: Visit): boolean =>
  [...house.stages, ...house.beside].every((stage) =>
    ratings(house, stage, on).some(({ action, level }) => action === 'opens' && level !== 'In dispute'),
  )

/** Whether the hot readings would satisfy whoever knows what to look for. */
export function looksMended(visit: Visit, faults: readonly Fault[]): boolean {
  return visit.house.stages.every((stage) => {
    const hot = toPascals(pressureAt(stage, faults, asFoundHot) / 100, 'inH2O')
    const limit = visit.ratings(visit.house, stage, visit.on).find(({ action }) => action === 'opens')
    return limit !== undefined && hot > limit.pascals + toPascals(0.13, 'inH2O')
  })
}

/** Reads every stage, and the air switches beside them, after the repair, and CO in room and flue. Answers the reading of the first stage. */
export function readAfter(visit: Visit, faults: readonly Fault[], alsoCold: boolean): string {
  const { random, house } = visit
  const when = 'after repair' as const
  if (alsoCold) {
    for (const stage of house.stages) visit.read({ ...asFoundCold, stage, faults, phase: 'pre-purge', when })
    const rest = { ...asFoundCold, stage: house.stages[0]!, faults, phase: 'rest' as const, when }
    visit.read(rest, { contacts: 'open' })
  }
  const read = house.stages.map((stage) =>
    visit.read({ ...asFoundHot, stage, faults, phase: 'steady hot', when }),
  )
  // Nothing that is wrong with the furnaces of the demo acts on those.
  for (const stage of house.beside)
    visit.read({ ...asFoundHot, stage, faults: [], phase: 'steady hot', when })
  const flue = 22 + Math.floor(random() * 40)
  const body = {
    when,
    roomCoPpm: Math.floor(random() * 3),
    roomCoLimitPpm,
    flueCoPpm: [flue, flue + Math.floor(random() * 6) - 3],
    ...flueLimitOf(house),
    minutesRunning: 15 + Math.floor(random() * 8),
    meter,
  }
  visit.testCombustion(body)
  return read[0]!
}

/** What makes an ending that claims proof whole; now and then something is forgotten. */
export function proof(visit: Visit): Pick<EndingBody, 'thermostatCycles' | 'putBack' | 'nothingToPutBack'> {
  const { random, house } = visit
  const lacking = putBackItems.filter(
    (item) => (item === 'trap primed' && !house.condensing) || (item === 'joints sealed' && random() < 0.4),
  )
  const there = putBackItems.filter((item) => !lacking.includes(item))
  const forgotten = happens(random, 0.05) ? pick(random, there) : undefined
  return {
    thermostatCycles: happens(random, 0.04) ? 1 : 3,
    putBack: there.filter((item) => item !== forgotten),
    nothingToPutBack: lacking,
  }
}
