import type { Match } from '@/lib/core/find'

/** From this score on a text is only near what was typed; below it, it holds it. See lib/core/find. */
export const nearFrom = 0.3

/**
 * What is said above the results: how many there are of what was typed, whether more were left out, and whether none of them is what
 * was typed, so that a near number is never taken for the right one.
 *
 * @param matches one more than are listed, where there are so many
 */
export function resultWords(matches: readonly Match[], listed: number): string {
  const [best] = matches
  if (best === undefined) return 'Nothing found'
  if (best.score >= nearFrom) return 'Not on file as typed. The nearest, each of them something else:'
  const found = matches.filter(({ score }) => score < nearFrom).length
  if (found > listed) return `The first ${listed}. Type more to narrow it down.`
  return `${found} found`
}
