import type { SourceKind } from '@/lib/core/vocabulary'
import type { RatingReport, RatingSettings, ReliabilityCounts, ReliabilityKey } from './types'

/**
 * Start reliabilities, as Beta counts that grow as disputes are settled. Common practice, no published source.
 * What factory support said and nobody read back can have been misheard like a distributor's word, so it starts
 * where that does (our reading).
 */
export const startCounts: Readonly<Record<ReliabilityKey, ReliabilityCounts>> = {
  'factory switch label, with photo': { right: 97, wrong: 3 },
  'factory switch label, without photo': { right: 92, wrong: 8 },
  'data plate': { right: 95, wrong: 5 },
  'current literature': { right: 96, wrong: 4 },
  'older literature': { right: 88, wrong: 12 },
  'factory support, read back': { right: 96, wrong: 4 },
  'factory support, not read back': { right: 75, wrong: 25 },
  'distributor, read back': { right: 90, wrong: 10 },
  'distributor, not read back': { right: 75, wrong: 25 },
  'bench check': { right: 85, wrong: 15 },
  'unknown switch label': { right: 60, wrong: 40 },
  'parts listing': { right: 60, wrong: 40 },
  remembered: { right: 50, wrong: 50 },
  imported: { right: 50, wrong: 50 },
}

const leadSources: readonly SourceKind[] = [
  'bench check',
  'unknown switch label',
  'parts listing',
  'remembered',
  'imported',
]

/** Whether a source is never more than a lead: listed beside better reports, and Unverified when alone. */
export const isLeadSource = (source: SourceKind): boolean => leadSources.includes(source)

const switchInHandSources: readonly SourceKind[] = [
  'factory switch label',
  'unknown switch label',
  'bench check',
]

/** Whether a report rests on a switch that somebody held, and so cannot tell whether it is the right switch. */
export const restsOnSwitchInHand = (source: SourceKind): boolean => switchInHandSources.includes(source)

/**
 * Whether a report may not be outvoted: while it names another value, the rating is in dispute. Factory support
 * counts whether or not it was read back, which errs towards a dispute.
 */
export function isStrong({ source, readBack }: RatingReport): boolean {
  if (source === 'distributor') return readBack === true
  return (
    source === 'factory switch label' ||
    source === 'data plate' ||
    source === 'current literature' ||
    source === 'factory support'
  )
}

/** The row of `startCounts` that a report falls under. */
export function reliabilityKeyOf({ source, proof, readBack }: RatingReport): ReliabilityKey {
  if (source === 'factory switch label') return `${source}, ${proof === 'photo' ? 'with' : 'without'} photo`
  if (source === 'factory support' || source === 'distributor')
    return `${source}, ${readBack === true ? 'read back' : 'not read back'}`
  return source
}

const meanOf = (key: ReliabilityKey, settings: RatingSettings): number => {
  const { right, wrong } = settings.reliability?.[key] ?? startCounts[key]
  if (!(right > 0 && wrong > 0 && Number.isFinite(right + wrong)))
    throw new RangeError(
      `The reliability of “${key}” requires two positive counts, not ${right} and ${wrong}`,
    )
  return right / (right + wrong)
}

const held = (probability: number): number => Math.min(0.995, Math.max(0.5, probability))

/**
 * The probability that a report names the true value: the mean of its source's Beta counts, held within
 * 0.50 to 0.995. A second reader of the same photo, or a second listener on the same call, divides the doubt by
 * five: it rules out a misreading, not a wrong source. A lead's doubt is its source, so there it changes nothing.
 *
 * @throws RangeError if a setting's counts are not positive
 * @example reliabilityOf(photoOfTheFactoryLabel, settings) // 0.97; with a second reader 0.994
 */
export function reliabilityOf(report: RatingReport, settings: RatingSettings): number {
  const mean = meanOf(reliabilityKeyOf(report), settings)
  return held(report.secondPerson && !isLeadSource(report.source) ? 1 - (1 - mean) / 5 : mean)
}

/** The reliability of the weakest report that is no lead: what leads together are held at or below. */
export function weakestReliability(settings: RatingSettings): number {
  const keys = Object.keys(startCounts) as ReliabilityKey[]
  return held(
    Math.min(
      ...keys.filter((key) => !leadSources.some((lead) => lead === key)).map((key) => meanOf(key, settings)),
    ),
  )
}
