import type { RatingReport } from './types'

/** What a number is worth nothing without: direction, kind of switch, the two places, the hose's end, the stage. */
const bundleParts = ['sense', 'kind', 'between', 'tap', 'stage'] as const

export type BundlePart = (typeof bundleParts)[number]

/** What the reports say of one part of the bundle, each once, in the order of the words; 'not stated' is no word. */
export const wordsOn = (reports: readonly RatingReport[], part: BundlePart): string[] =>
  [...new Set(reports.map((report) => report[part] as string))].filter((word) => word !== 'not stated').sort()

/**
 * The one word that reports share on a part of the bundle. Undefined where they state none, or contradict each
 * other: then the number is not one number, and no word is chosen for the reader.
 * @example sharedWord([labelBetweenPortAndRoom, distributorNotStated], 'between') // 'port and room'
 */
export function sharedWord<Part extends BundlePart>(
  reports: readonly RatingReport[],
  part: Part,
): RatingReport[Part] | undefined {
  const words = wordsOn(reports, part)
  return words.length === 1 ? (words[0] as RatingReport[Part]) : undefined
}

/** The parts of the bundle on which reports that agree on the number contradict each other. */
export const contradictions = (reports: readonly RatingReport[]): BundlePart[] =>
  bundleParts.filter((part) => wordsOn(reports, part).length > 1)
