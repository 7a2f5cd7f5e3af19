import type { Judgement } from '@/lib/core/reading'
import { isNearLimit, speaksAgainstTheSwitch } from './offFurnace'
import type { Requirement } from './requirement'
import { samePart } from './supersession'
import { type CaseState, type GuardSettings, type LookName, lookNames } from './types'

const lookRequirement: Record<LookName, Requirement> = {
  termination: 'termination-clear',
  intake: 'intake-clear',
  ventSlopeAndWater: 'vent-slope-and-water-clear',
  drainAndTrap: 'drain-and-trap-clear',
  hose: 'hose-clear',
  port: 'port-clear',
  inducerSoundAndVolts: 'inducer-sound-and-volts-right',
  wiring: 'wiring-sound',
}

/** The looks that are not on record as clear, in the order of the work. */
export const looksMissing = (looks: CaseState['looks']): Requirement[] =>
  lookNames.filter((name) => looks[name] !== 'clear').map((name) => lookRequirement[name])

/** The looks that found something: that is to be repaired first. */
export const looksThatFoundFault = (looks: CaseState['looks']): Requirement[] =>
  lookNames.filter((name) => looks[name] === 'fault found').map((name) => lookRequirement[name])

/** The factory part is named by somebody who speaks for the maker. */
export const isFactoryPartNamed = (
  part: CaseState['part'],
  settings: Pick<GuardSettings, 'listers'>,
): boolean =>
  part.factory !== undefined &&
  settings.listers.includes(part.factory.listedBy) &&
  part.factory.listedWhere.trim() !== ''

/** The fitted number and the factory number stand for one part; undefined while either is not on record. */
export const isFittedPartRight = (part: CaseState['part']): boolean | undefined =>
  part.fitted === undefined || part.factory === undefined
    ? undefined
    : samePart(part.fitted, part.factory.partNumber, part.supersessions)

/** The judgement against one action, whichever question it answers. */
export const judgementAgainst = (state: CaseState, against: Judgement['against']): Judgement | undefined =>
  [state.reading?.comparison.start, state.reading?.comparison.run].find(
    (judgement) => judgement?.against === against,
  )

/** The reading leaves the switch closed, with everything that can be wrong counted against it. */
export const clearsTheLimit = (judgement: Judgement | undefined, kind: CaseState['kind']): boolean =>
  judgement?.clearsWorstCase === true &&
  judgement.verdict === (kind === 'opens on rise' ? 'too low' : 'enough')

function ratingMissing(rating: CaseState['rating'], action: 'closes' | 'opens'): Requirement[] {
  const missing: Requirement[] = []
  const fromTheMaker = rating?.sources.some(
    (source) => source === 'current literature' || source === 'factory support',
  )
  if (!(rating?.level === 'Verified' || (rating?.level === 'Supported' && fromTheMaker)))
    missing.push('rating-trusted')
  if (rating?.action !== action) missing.push('rating-action-stated')
  if (rating?.level === 'In dispute') missing.push('rating-not-in-dispute')
  if (rating?.stageAndElevation !== 'right') missing.push('rating-holds-here')
  return missing
}

function gaugeMissing(gauge: CaseState['gauge']): Requirement[] {
  const missing: Requirement[] = []
  if (gauge?.zeroed !== true) missing.push('gauge-zeroed')
  if (gauge?.uncertaintyKnown !== true) missing.push('gauge-uncertainty-known')
  if (gauge?.calibration !== 'current') missing.push('gauge-in-calibration')
  return missing
}

function readingMissing(state: CaseState, judgement: Judgement | undefined): Requirement[] {
  const missing: Requirement[] = []
  const comparison = state.reading?.comparison
  const open = comparison?.openPoints ?? ['between']
  if (state.reading?.byTeeAtTheSwitch !== true) missing.push('reading-at-the-switch')
  if (open.includes('between') || open.includes('stage')) missing.push('reading-between-rated-points')
  if (!clearsTheLimit(judgement, state.kind)) missing.push('reading-clears-the-limit')
  // What opens early does so at an instant; a minute's watch is asked of one that will not close.
  const steady =
    state.complaint === 'opens early' ? comparison?.flutter === false : comparison?.steady === 'steady'
  if (!steady) missing.push('reading-steady')
  if (comparison?.contacts !== 'open') missing.push('contact-open-at-that-moment')
  return missing
}

function offFurnaceMissing(
  state: CaseState,
  judgement: Judgement | undefined,
  settings: GuardSettings,
): Requirement[] {
  const { offFurnace, kind } = state
  // Without a reading against this limit nobody knows yet whether it is near; that reading is missing first.
  const satisfied =
    judgement === undefined ||
    (offFurnace === undefined
      ? !isNearLimit(judgement, kind, settings)
      : speaksAgainstTheSwitch(offFurnace, judgement, kind, settings))
  return satisfied ? [] : ['off-furnace-check']
}

/**
 * What is missing before a switch that will not close, or opens early, may be called faulty. A check off the furnace
 * is asked for near the limit, and wherever one was made it has to speak against the switch. Common practice, no
 * published source; the switch comes last in a maker's own troubleshooting table (service literature of a
 * single-stage condensing furnace).
 */
export function missingToBlame(
  state: CaseState,
  action: 'closes' | 'opens',
  settings: GuardSettings,
): Requirement[] {
  const judgement = judgementAgainst(state, action)
  return [
    ...looksMissing(state.looks),
    ...(state.part.fitted === undefined ? (['fitted-part-recorded'] as const) : []),
    ...(isFactoryPartNamed(state.part, settings) ? [] : (['factory-part-named'] as const)),
    ...(isFittedPartRight(state.part) === true ? [] : (['part-number-right'] as const)),
    ...ratingMissing(state.rating, action),
    ...gaugeMissing(state.gauge),
    ...readingMissing(state, judgement),
    ...offFurnaceMissing(state, judgement, settings),
  ]
}
