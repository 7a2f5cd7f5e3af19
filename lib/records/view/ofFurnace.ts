import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import { groupedOnce } from './grouped'

type OfSome = { furnaceId?: string | undefined }

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
  return (byFurnace(file, entries).get(file.keptId(furnaceId)) ?? []) as readonly Entry<Body>[]
}

/** By the moment they were said; of one moment by their ids. */
export const oldestFirst = (a: Entry<unknown>, b: Entry<unknown>): number =>
  a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1

const byFurnace = groupedOnce<OfSome>(
  ({ furnaceId }) => (furnaceId === undefined ? [] : [furnaceId]),
  oldestFirst,
)
