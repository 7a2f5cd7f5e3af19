import { confirmRatingRange } from '@/lib/core/pressure'
import type { Level } from '@/lib/core/vocabulary'
import { whyLevel } from './explain'
import { byOrigin } from './origins'
import { isSuperseded, partNumbersOf } from './partNumbers'
import { slack } from './resolution'
import type { WeighedRival } from './rivals'
import { contradictions, wordsOn } from './sameBundle'
import { weighingSettings } from './settings'
import { reliabilityOf, restsOnSwitchInHand } from './sources'
import { isStale } from './staleness'
import type { RatingReport, RatingSettings } from './types'

/** Bars of the levels. Common practice, no published source. */
const verifiedProbability = 0.99
const supportedProbability = 0.9
const verifiedReliability = 0.9

type Judged = { level: Exclude<Level, 'Not on file'>; reasons: string[] }

const levels = ['Unverified', 'Supported', 'Verified'] as const
type Ladder = (typeof levels)[number]

const noHigherThan = (level: Ladder, cap: Ladder): Ladder =>
  levels.indexOf(level) > levels.indexOf(cap) ? cap : level

const oneDown = (level: Ladder): Ladder => levels[Math.max(0, levels.indexOf(level) - 1)]!

const asksForConfirmation = (pascals: number): boolean =>
  pascals < confirmRatingRange.lowPascals * (1 - slack) ||
  pascals > confirmRatingRange.highPascals * (1 + slack)

/** The level by weight and proof alone, and what is wanting for the next one. */
function byWeight(
  probability: number,
  agreeing: readonly RatingReport[],
  settings: RatingSettings,
): [Ladder, string[]] {
  const proven = agreeing.filter(({ proof }) => proof !== undefined)
  if (proven.length === 0) return ['Unverified', [whyLevel.needsProof()]]
  if (probability < supportedProbability - slack) return ['Unverified', [whyLevel.needsWeight()]]
  const reliable = proven.some((report) => reliabilityOf(report, settings) >= verifiedReliability - slack)
  const origins = byOrigin(agreeing)
  const elsewhere = origins.some((origin) => origin.every(({ source }) => !restsOnSwitchInHand(source)))
  const wanting = [
    ...(reliable ? [] : [whyLevel.needsReliable()]),
    ...(origins.length >= 2 && elsewhere ? [] : [whyLevel.needsSecond()]),
  ]
  if (wanting.length > 0) return ['Supported', wanting]
  return probability >= verifiedProbability - slack
    ? ['Verified', []]
    : ['Supported', [whyLevel.needsWeight()]]
}

/**
 * The level of a value, and why.
 *
 * In dispute: a rival disputes it, or the agreeing reports contradict each other on what else belongs to the number
 * (sense, kind, between which points, where the hose ends, stage). Verified: 0.99, a proven report of reliability
 * 0.90 or more, and two origins of which one is not the switch itself; a label on another furnace's switch is still
 * a switch's label. Supported: 0.90 and a proven report. Unverified: any other.
 *
 * A mere decimal slip, and agreeing reports for different part numbers, cap the level at Supported; a magnitude that
 * asks for confirmation caps it at Unverified. A superseded part number, unless a proven report names one that is
 * not, and proof that is only old calls each take it one step down (our reading: both together, two steps).
 *
 * @param probability of the value shown
 * @param agreeing the weighed reports that name it, at least one
 */
export function levelOf(
  pascals: number,
  probability: number,
  agreeing: readonly RatingReport[],
  rivals: readonly WeighedRival[],
  settings: RatingSettings,
): Judged {
  const contradicted = contradictions(agreeing).map((part) =>
    whyLevel.bundleDiffers(part, wordsOn(agreeing, part)),
  )
  const disputing = rivals.filter(({ disputes }) => disputes)
  if (disputing.length > 0 || contradicted.length > 0) {
    const named = disputing.map(({ reports, slip }) => whyLevel.rival(reports, slip))
    return { level: 'In dispute', reasons: [...named, ...contradicted] }
  }

  let [level, reasons] = byWeight(probability, agreeing, settings)
  const cap = (highest: Ladder, reason: string) => {
    level = noHigherThan(level, highest)
    reasons = [...reasons, reason]
  }
  for (const { reports, slip, mereSlip } of rivals)
    cap(mereSlip ? 'Supported' : 'Verified', whyLevel.unlikely(reports, slip))
  const partNumbers = partNumbersOf(agreeing)
  if (partNumbers.length > 1) cap('Supported', whyLevel.partsDiffer(partNumbers))
  if (asksForConfirmation(pascals)) cap('Unverified', whyLevel.unusualSize(pascals))

  const proven = agreeing.filter(({ proof }) => proof !== undefined)
  const superseded = partNumbers.filter((partNumber) => isSuperseded(partNumber, settings))
  const current = partNumbersOf(proven).some((partNumber) => !isSuperseded(partNumber, settings))
  if (superseded.length > 0 && !current) cap(oneDown(level), whyLevel.superseded(superseded))
  const weighing = weighingSettings(settings)
  if (proven.length > 0 && proven.every((report) => isStale(report, weighing)))
    cap(oneDown(level), whyLevel.stale(weighing.staleAfterMonths))
  return { level, reasons }
}
