import type { Level } from '../vocabulary'

/** Where one rating stands. `key` names the rating's bundle, as the caller likes. */
export type RankedStanding = { key: string; level: Level; probability: number }

export type Lookups = { key: string; times: number }

export type Ranked = {
  key: string
  level: Level
  lookups: number
  /** The chance that what a lookup found was not the rating: 1 where there is none to be shown as such. */
  doubt: number
  /** lookups · doubt: how often somebody left without the right number. */
  lookupsInDoubt: number
}

/**
 * The ratings whose verification would have helped most: looked up often, known badly. A rating in dispute, or not on
 * file, gives nobody a number to rely on, so its doubt is whole; otherwise the doubt is what the standing's
 * probability leaves. A verified rating is never listed. The weighing is common practice, no published source.
 *
 * @param standings one for each key; a key that was looked up and has none counts as not on file
 * @param lookups several of one key are added up
 * @returns most worth first; those never looked up are left out
 * @throws RangeError when a key has two standings, a probability is not 0 to 1, or a number of lookups is negative
 * @example Unverified at 0.75, looked up 12 times: 3 lookups in doubt
 */
export function worthVerifyingNext(
  standings: readonly RankedStanding[],
  lookups: readonly Lookups[],
): Ranked[] {
  const byKey = new Map(standings.map((standing) => [standing.key, standing]))
  if (byKey.size < standings.length)
    throw new RangeError('worthVerifyingNext requires one standing for each key')
  if (standings.some(({ probability }) => !(probability >= 0 && probability <= 1)))
    throw new RangeError('worthVerifyingNext requires probabilities from 0 to 1')
  if (lookups.some(({ times }) => !(times >= 0 && times < Infinity)))
    throw new RangeError('worthVerifyingNext requires numbers of lookups, 0 or more')
  const timesByKey = new Map<string, number>()
  for (const { key, times } of lookups) timesByKey.set(key, (timesByKey.get(key) ?? 0) + times)
  return [...timesByKey]
    .map(([key, times]): Ranked => {
      const { level, probability } = byKey.get(key) ?? { level: 'Not on file', probability: 0 }
      const doubt = level === 'In dispute' || level === 'Not on file' ? 1 : 1 - probability
      return { key, level, lookups: times, doubt, lookupsInDoubt: times * doubt }
    })
    .filter(({ level, lookups }) => level !== 'Verified' && lookups > 0)
    .toSorted(
      (a, b) => b.lookupsInDoubt - a.lookupsInDoubt || b.lookups - a.lookups || (a.key < b.key ? -1 : 1),
    )
}
