import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'

type OfSome = { furnaceId?: string | undefined }

const indexes = new WeakMap<object, ReadonlyMap<string, Entry<OfSome>[]>>()

/**
 * The entries of one kind that are of a furnace and count, oldest first. They are sorted once for a whole team file,
 * so that looking at every case of a team does not read every record for each of them.
 * @example ofFurnace(file, file.baselines, furnace.id)
 */
export function ofFurnace<Body extends OfSome>(
  file: Pick<TeamFile, 'keptId'>,
  entries: ReadonlyMap<string, Entry<Body>>,
  furnaceId: string,
): readonly Entry<Body>[] {
  const index = indexes.get(entries) ?? byFurnace(file, entries)
  indexes.set(entries, index)
  return (index.get(file.keptId(furnaceId)) ?? []) as Entry<Body>[]
}

function byFurnace(
  file: Pick<TeamFile, 'keptId'>,
  entries: ReadonlyMap<string, Entry<OfSome>>,
): Map<string, Entry<OfSome>[]> {
  const index = new Map<string, Entry<OfSome>[]>()
  for (const entry of counting(entries).sort(oldestFirst)) {
    if (entry.body.furnaceId === undefined) continue
    const key = file.keptId(entry.body.furnaceId)
    const group = index.get(key)
    if (group === undefined) index.set(key, [entry])
    else group.push(entry)
  }
  return index
}

/** By the moment they were said; of one moment by their ids. */
export const oldestFirst = (a: Entry<unknown>, b: Entry<unknown>): number =>
  a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1
