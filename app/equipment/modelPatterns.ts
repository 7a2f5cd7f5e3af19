import { buildFindIndex, find } from '@/lib/core/find'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { EquipmentRangeBody } from '@/lib/records/kinds/equipmentRange'

/**
 * A pattern as the search reads it, which knows the asterisk alone: a question mark is opened to any run of
 * characters. It can only fit more models than the pattern itself, never fewer.
 *
 *   openPattern('LF2-0??-*')  // 'LF2-0**-*'
 */
export const openPattern = (pattern: string): string => pattern.replaceAll('?', '*')

/** Below this a text is the number itself, or a pattern that stands for it; above it only holds it or is near it. */
export const fitsBelow = 0.1

/** How many ranges are worth offering for one model number. */
const offered = 6

/**
 * The ranges whose model numbers or patterns stand for a model number, best first. A suggestion for a person to check
 * on the data plate, never an answer.
 */
export function rangesThatFit(file: TeamFile, model: string): Entry<EquipmentRangeBody>[] {
  const ranges = counting(file.ranges)
  const index = buildFindIndex(
    ranges.map(({ id, body }) => ({ key: id, texts: body.modelPatterns.map(openPattern) })),
  )
  return find(index, model, offered)
    .filter(({ score }) => score < fitsBelow)
    .flatMap(({ key }) => ranges.find(({ id }) => id === key) ?? [])
}

/** Patterns as they are typed, one a line. */
export const patternsIn = (typed: string): string[] =>
  typed
    .split(/[\n;]/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
