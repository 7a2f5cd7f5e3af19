import type { SameAsBody } from '../kinds/sameAs'

/**
 * Follows duplicates to the records that they were joined to.
 * @param joins what was joined and not parted again, in the order of the log: the newest join of a record counts
 * @example keptIds([{ kept: 'a', duplicate: 'b' }])('b') // 'a'
 */
export function keptIds(joins: readonly Pick<SameAsBody, 'kept' | 'duplicate'>[]): (id: string) => string {
  const keptBy = new Map(joins.map(({ kept, duplicate }) => [duplicate, kept]))
  return (id) => (keptBy.has(id) ? followKept(keptBy, id) : id)
}

/** Follows "same as" to its end. Two people can join two records crosswise; then the smaller id is kept. */
function followKept(keptBy: ReadonlyMap<string, string>, id: string): string {
  const seen = [id]
  for (let next = keptBy.get(id); next !== undefined; next = keptBy.get(next)) {
    if (seen.includes(next)) return seen.slice(seen.indexOf(next)).sort()[0]!
    seen.push(next)
  }
  return seen[seen.length - 1]!
}
