import type { AdviceCode, Comparison } from '@/lib/core/reading'
import { type DangerCode, dangerFindingIds, dangerSentence, everybodyOutIds } from './dangerFindings'

export type Danger = {
  code: DangerCode
  urgency: 'everybody out' | 'stop and leave off'
  sentence: string
  steps: readonly string[]
  /** What comes before all of this; no step of its own. */
  defers: string
}

export type DangerReadings = {
  /** CO in room air and the employer's own limit, ppm. */
  roomCo?: { ppm: number; employersLimitPpm: number }
  /** CO in the flue in the order of measuring, and the limit of the unit's manual or the employer, ppm. */
  flueCo?: { ppm: readonly number[]; limitPpm: number }
  comparisons?: readonly Comparison[]
}

/** Said wherever nothing dangerous is on record: silence is no permission. */
export const noPermission =
  'No danger finding is on record. That is no permission to run: the maker’s instructions, local codes and a licensed person decide.'

/** Said before anybody goes in. */
export const beforeEntering = 'Carry a CO meter, switched on, before you go in.'

const defers =
  'The maker’s instructions, local codes and a licensed person’s judgement come before anything shown here.'

const everybodyOutSteps = [
  'Everybody out now.',
  'Operate no electrical switch.',
  'Put this phone away.',
  'From outside, call the emergency number and the gas supplier.',
] as const

const leaveOffSteps = [
  'Gas and power off, if that is safe.',
  'Leave it off.',
  'Tag it.',
  'Tell the occupant, and whoever local rules name.',
] as const

/**
 * Room CO of this much and more is a danger whatever limit was typed, ppm: guideline bands in public protocols say to
 * leave the building from here (secondary text only). It is a ceiling and no limit: less than this permits nothing.
 */
const ceilingRoomCoPpm = 100

/** No limit is taken above this: the figure commonly quoted from furnace certification (secondary text only), ppm. */
const highestFlueCoLimitPpm = 400

/** A rise no larger than this is taken for the analyser's own scatter, ppm (common practice, no published source). */
const flueCoScatterPpm = 10

const dangerOfAdvice: Readonly<Partial<Record<AdviceCode, DangerCode>>> = {
  'stop-closed-at-rest': 'switch-closed-at-rest',
  'stop-closed-below-its-rating': 'switch-closes-below-rating',
  'stop-closed-above-its-opening-point': 'switch-stays-closed-above-opening-point',
}

const concentration = (ppm: number): number => {
  if (!(ppm >= 0 && ppm < Number.POSITIVE_INFINITY))
    throw new RangeError(`dangerIn requires CO of zero or more ppm, not ${ppm}`)
  return ppm
}

function isClimbing(ppm: readonly number[]): boolean {
  const rising = ppm.every((value, index) => index === 0 || value >= (ppm[index - 1] ?? value))
  return ppm.length >= 3 && rising && (ppm.at(-1) ?? 0) - (ppm[0] ?? 0) > flueCoScatterPpm
}

function measured({ roomCo, flueCo, comparisons }: DangerReadings): DangerCode[] {
  const codes: DangerCode[] = []
  if (roomCo) {
    const isAbove = concentration(roomCo.ppm) > concentration(roomCo.employersLimitPpm)
    if (isAbove || roomCo.ppm >= ceilingRoomCoPpm) codes.push('room-co-above-limit')
  }
  if (flueCo) {
    const highest = Math.max(0, ...flueCo.ppm.map(concentration))
    if (highest > concentration(flueCo.limitPpm) || highest >= highestFlueCoLimitPpm)
      codes.push('flue-co-high')
    if (isClimbing(flueCo.ppm)) codes.push('flue-co-climbing')
  }
  for (const { advice } of comparisons ?? [])
    for (const code of advice) {
      const danger = dangerOfAdvice[code]
      if (danger !== undefined) codes.push(danger)
    }
  return codes
}

/**
 * Every danger in what was seen and measured, the gravest first. It stands above any ranking of causes, which is
 * hidden until it is answered. An empty answer is no permission to run, and no band of CO ever is.
 * @param findings plain ids of what was seen; an id that is no danger is passed over
 * @throws RangeError for a concentration that is negative or not finite
 * @example dangerIn(['jumper-or-bypass'], {}) // stop and leave off
 */
export function dangerIn(findings: readonly string[], readings: DangerReadings): Danger[] {
  const present = new Set<string>([...findings, ...measured(readings)])
  const out = new Set<string>(everybodyOutIds)
  return dangerFindingIds
    .filter((code) => present.has(code))
    .map((code) => ({
      code,
      urgency: out.has(code) ? 'everybody out' : 'stop and leave off',
      sentence: dangerSentence[code],
      steps: out.has(code) ? everybodyOutSteps : leaveOffSteps,
      defers,
    }))
}
