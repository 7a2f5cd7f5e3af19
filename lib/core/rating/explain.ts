import { formatPressure } from '@/lib/core/pressure'
import { sayDate } from '@/lib/core/sayDate'
import type { SourceKind } from '@/lib/core/vocabulary'
import type { BundlePart } from './sameBundle'
import type { Disorder, RatingReport, Slip } from './types'

/** How each source is named in a sentence. */
const sourceWords: Readonly<Record<SourceKind, string>> = {
  'factory switch label': 'the label on the factory switch',
  'unknown switch label': 'a label on a switch of unknown origin',
  'data plate': 'the data plate',
  'current literature': 'the maker’s current literature',
  'older literature': 'older literature of the maker',
  'factory support': 'factory technical support',
  distributor: 'a distributor',
  'parts listing': 'a parts listing',
  'bench check': 'a bench check',
  remembered: 'a hand-written or remembered number',
  imported: 'an imported row without proof',
}

const slipWords: Readonly<Record<Slip, string>> = {
  'ten times': 'It is ten times the other value: look for a slipped decimal point.',
  'a tenth': 'It is a tenth of the other value: look for a slipped decimal point.',
  'break taken for make':
    'It is the known break point: the break may have been taken for the make. Ask which is which.',
  'make taken for break':
    'It is the known make point: the make may have been taken for the break. Ask which is which.',
  'sister switch taken for this one':
    'It is the known value of the sister switch: the two may have been swapped. Ask which stage it is for.',
  'number read in another unit': 'Its number fits the other value in another unit. Ask for the unit.',
}

const partWords: Readonly<Record<BundlePart, string>> = {
  sense: 'suction or pressure',
  kind: 'the kind of switch',
  between: 'what the number is measured between',
  tap: 'where the hose ends',
  stage: 'the stage',
}

const capital = (sentence: string): string => sentence.charAt(0).toUpperCase() + sentence.slice(1)

/** A report in a sentence: its source, its day, and what is written, letter for letter. */
const named = ({ source, saidAt, asWritten }: RatingReport): string =>
  `${sourceWords[source]} (${sayDate(saidAt)}, “${asWritten}”)`

const all = (reports: readonly RatingReport[]): string => reports.map(named).join('; ')

/** Why a report is left out of the weighing, or is no more than a lead. */
export const whyNotCounted = {
  generalPurpose: (report: RatingReport) =>
    capital(
      `${named(report)} was read off an adjustable or general-purpose switch. That is no evidence of this furnace’s rating, so it is left out.`,
    ),
  overruled: (report: RatingReport, evidence: RatingReport) =>
    capital(`${named(report)} was overruled by ${named(evidence)}.`),
  doesNotCover: (report: RatingReport, what: string) =>
    capital(`${named(report)} is for another ${what} than this furnace’s, so it is left out.`),
  leadSource: ({ source }: RatingReport) =>
    source === 'bench check'
      ? 'A bench check supports a rating; it never defines one.'
      : capital(`${sourceWords[source]} is a lead to follow up, not a rating.`),
  partNotKnown: () =>
    'Nobody has recorded that the switch with this label is the factory part, so its label is one of unknown origin.',
  madeElsewhere: (what: string) =>
    `It was made on another furnace and does not say which ${what} it covers, so here it is a lead.`,
  notKnownHere: (what: string) =>
    `It covers a certain ${what}, and this furnace’s is not recorded. Record it, and the report counts or drops out.`,
  cannotCompare: (what: string) =>
    `It cannot be told whether this furnace’s ${what} is in the range that it covers, so here it is a lead.`,
} as const

/** Why a settled dispute does not hold. */
export const whyUnsettled = {
  evidenceGone: () =>
    'A dispute was settled by a report that is withdrawn, overruled or not for this furnace, so it is open again.',
  notEnough: (evidence: RatingReport) =>
    capital(
      `${named(evidence)} cannot settle a dispute. Factory technical support with a reference, or a page of the maker’s current literature, can.`,
    ),
  older: (evidence: RatingReport, overruled: RatingReport) =>
    capital(`${named(evidence)} is older than ${named(overruled)}, so it is no new evidence against it.`),
} as const

/** Why a standing has its level, and what would raise it. */
export const whyLevel = {
  nothing: () => 'No usable report is on file. Start a rating request.',
  agree: (reports: readonly RatingReport[]) => `It rests on ${all(reports)}.`,
  rival: (reports: readonly RatingReport[], slip: Slip | undefined) =>
    [
      capital(`${all(reports)} names another value.`),
      ...(slip === undefined ? [] : [slipWords[slip]]),
      'Settle it with factory technical support and a reference, or with the maker’s current page.',
    ].join(' '),
  unlikely: (reports: readonly RatingReport[], slip: Slip | undefined) =>
    [
      capital(`${all(reports)} names another value, which is unlikely beside the rest.`),
      ...(slip === undefined ? [] : [slipWords[slip]]),
    ].join(' '),
  bundleDiffers: (part: BundlePart, words: readonly string[]) =>
    `The reports agree on the number and contradict each other on ${partWords[part]}: ${words.join(', ')}. Find out which holds.`,
  partsDiffer: (partNumbers: readonly string[]) =>
    `The reports are for different part numbers: ${partNumbers.join(', ')}. A rating is not carried over from one part to another.`,
  unusualSize: (pascals: number) =>
    `${formatPressure(pascals, 'Pa')} is far from the setting of any air switch. Have it confirmed.`,
  superseded: (partNumbers: readonly string[]) =>
    `Part number ${partNumbers.join(', ')} is superseded, and the setting may have changed: one level down.`,
  stale: (months: number) =>
    `The only proof is a call more than ${months} months old: one level down. Call again.`,
  mayBeDisputed: () =>
    'A report that may be for this furnace names another value. Record what it depends on before relying on this one.',
  leadsOnly: () => 'Only leads are on file: nothing here is proof of this furnace’s rating.',
  leadsDiffer: () => 'The leads do not agree with each other.',
  tolerancesDiffer: () => 'The reports give different tolerances. The widest is shown.',
  needsProof: () =>
    'No photo, document or call reference backs it yet. Add one; a photo that waits to be sent counts once it is sent.',
  needsWeight: () =>
    'What is on file is not reliable enough together. Have the source read it back, or find a better one.',
  needsReliable: () =>
    'No report with proof is from a source reliable enough to verify a rating. A read-back call or the maker’s literature would be.',
  needsSecond: () => 'A second source besides the switch itself would verify it.',
} as const

/** What looks out of order between two ratings of one furnace. */
export const whyOrder: Readonly<Record<Disorder, string>> = {
  'break beyond make':
    'The break point on file is beyond the make point. A switch breaks at less than it makes at: the two may have been swapped.',
  'low fire beyond high fire':
    'The low-fire value on file is beyond the high-fire value. The usual order is the other way round: the two may have been swapped.',
}
