import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'

/** Items by a key, each group in the order in which they come; those without a key are in none. */
export function groupedBy<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string | undefined,
): Map<string, Item[]> {
  const groups = new Map<string, Item[]>()
  for (const item of items) {
    const key = keyOf(item)
    if (key === undefined) continue
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [item])
    else group.push(item)
  }
  return groups
}

type Entries<Body> = ReadonlyMap<string, Entry<Body>>
type Groups<Body> = ReadonlyMap<string, readonly Entry<Body>[]>

/**
 * Sorts the counting entries of one kind by the records that they are about, once for a whole team file: whatever looks
 * at many of those does not read every entry for each of them. Joined records are followed. The groups are kept by the
 * entries alone: a map of entries is only ever asked about with the file that it is of, and so with one `keptId`.
 * @param idsOf the records that an entry is about, each named once
 * @param order left out: the order of the log
 * @example const byRange = groupedOnce<PositionBody>(({ rangeId }) => [rangeId])
 * byRange(file, file.positions).get(range.id)
 */
export function groupedOnce<Body>(
  idsOf: (body: Body) => readonly string[],
  order?: (one: Entry<Body>, other: Entry<Body>) => number,
): (file: Pick<TeamFile, 'keptId'>, entries: Entries<Body>) => Groups<Body> {
  const known = new WeakMap<Entries<Body>, Groups<Body>>()
  return (file, entries) => {
    const before = known.get(entries)
    if (before !== undefined) return before
    const all = counting(entries)
    const pairs = (order === undefined ? all : all.sort(order)).flatMap((entry) =>
      [...new Set(idsOf(entry.body).map(file.keptId))].map((key) => ({ key, entry })),
    )
    const groups = new Map(
      [...groupedBy(pairs, ({ key }) => key)].map(([key, of]) => [key, of.map(({ entry }) => entry)]),
    )
    known.set(entries, groups)
    return groups
  }
}
