import type { DangerCode } from '@/lib/core/guard'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { happens, pick } from '../drawing'
import { answer, type Found } from './findOut'
import { factorySwitch, fitSwitch } from './mend'
import type { Trouble } from './trouble'
import type { Visit } from './visit'

type Unsuitable = {
  finding: DangerCode
  what: FoundFittedBody['what']
  printed: readonly string[]
  likely: number
}

/** What is found in the place of the right switch, by the true cause, and how often it is recorded as that. */
const unsuitable: Readonly<Record<string, Unsuitable>> = {
  'wrong-switch-fitted': {
    finding: 'general-purpose-switch-fitted',
    what: 'adjustable or general-purpose switch',
    printed: ['ADJ 0.2-2.0, no other number', 'UNIV 4 IN ONE', 'nothing; a screw under a cap'],
    likely: 0.55,
  },
  'elevation-kit-not-called-for': {
    finding: 'wrong-elevation-switch-fitted',
    what: 'switch for another elevation',
    printed: ['HI ALT on a yellow dot', 'label of the kit, for high ground'],
    likely: 0.9,
  },
  'switch-bypassed': {
    finding: 'jumper-or-bypass',
    what: 'jumper or bypass',
    printed: ['nothing'],
    likely: 0.9,
  },
}

const fitters = [
  'not known',
  'the landlord’s handyman',
  'another company, says the owner',
  'one of ours, before we had this log',
] as const
const moments = ['not known', 'last winter', 'some weeks ago', 'when the furnace was moved'] as const

/** Records what should not be there as found fitted, with the danger that it is. */
export function seeUnsuitable(visit: Visit, { main }: Trouble, found: Found): Found['dangers'] {
  const { random, house, on } = visit
  const kind = unsuitable[main]
  if (kind === undefined || !happens(random, kind.likely)) return []
  const isTapped = found.dangers.some(({ finding }) => finding === kind.finding)
  if (!isTapped) visit.see(kind.finding, 'seen')
  const body: FoundFittedBody = {
    furnaceId: house.furnaceId,
    positionId: house.stages[0]!.positionId,
    printed: pick(random, kind.printed),
    what: kind.what,
    fittedWhen: pick(random, moments),
    fittedBy: pick(random, fitters),
    foundOn: on,
  }
  visit.say('found fitted', body, [1, 4])
  if (!isTapped) answer(visit, [kind.finding])
  return isTapped ? [] : [{ finding: kind.finding, code: kind.finding }]
}

/** Takes a bypass out, with a new factory switch where one is to be had: nobody knows what the old one went through. */
export function takeOutBypass(visit: Visit, found: Found): void {
  if (!found.dangers.some(({ code }) => code === 'jumper-or-bypass')) return
  const { positionId } = visit.house.stages[0]!
  if (factorySwitch(visit, visit.house.stages[0]!) !== undefined)
    fitSwitch(visit, 'Jumper out, factory switch in, wires back on its terminals', 20)
  else
    visit.repair({
      done: 'Jumper out, wires back on the switch',
      positionId,
      switchReplaced: false,
      minutes: 5,
    })
}
