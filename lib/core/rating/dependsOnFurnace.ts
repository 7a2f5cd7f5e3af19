import type { Ask, FurnaceRating, RatingStanding } from './types'

/**
 * What to ask before a number may be shown that rests on nothing but reports that may be for another furnace: a page for
 * one serial says nothing about a furnace whose serial nobody knows.
 *
 * @returns none where a report names the number that covers the furnace, or that nobody can tell more about
 */
export function asksBeforeShown({ leads, reportIds }: RatingStanding): readonly Ask[] {
  const behind = leads.filter(({ reportId }) => reportIds.includes(reportId))
  const allWait = behind.length === reportIds.length && behind.every(({ asks }) => asks.length > 0)
  return allWait ? behind.flatMap(({ asks }) => asks) : []
}

/**
 * Whether the number itself depends on something that is not known of the furnace, so that none may be shown, answered
 * or exported: no report that covers it names one, or a report that may cover it names another. What is needed, `asks`
 * says.
 *
 * @example dependsOnFurnace(ratingFor([pageForSerialK7], {}, settings), 'closes') // true
 */
export function dependsOnFurnace(rating: FurnaceRating, answer: 'closes' | 'opens' | 'unstated'): boolean {
  const { level, leads } = rating[answer]
  if (rating.asks.length === 0 || level === 'Not on file') return false
  return asksBeforeShown(rating[answer]).length > 0 || leads.some(({ agrees }) => !agrees)
}
