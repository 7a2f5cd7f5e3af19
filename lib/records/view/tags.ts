import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { FurnaceBody } from '../kinds/furnace'
import type { TagBody } from '../kinds/tag'
import { ofFurnace, oldestFirst } from './ofFurnace'

type Tag = Entry<TagBody>

/** Where a tag leads. */
export type TagStanding =
  | { is: 'on a furnace'; furnace: Entry<FurnaceBody>; tag: Tag }
  /** Two people put one tag on two furnaces: nobody but they can say which is right. */
  | { is: 'on two furnaces'; each: { furnace: Entry<FurnaceBody>; tag: Tag }[] }
  /** Taken off, and nothing was said of it since. */
  | { is: 'withdrawn'; tag: Tag }
  | { is: 'on none yet' }

/**
 * What is on file of a tag by its code. Said twice of one furnace is said once. A tag that was withdrawn and then
 * stuck on again is where it was stuck last.
 */
export function tagStanding(file: TeamFile, code: string): TagStanding {
  const told = [...file.tags.values()].filter(({ body }) => body.code === code).sort(oldestFirst)
  const standing = new Map<string, { furnace: Entry<FurnaceBody>; tag: Tag }>()
  for (const tag of told) {
    const furnace = file.furnaces.get(file.keptId(tag.body.furnaceId))
    if (tag.withdrawn === undefined && furnace !== undefined) standing.set(furnace.id, { furnace, tag })
  }
  const each = [...standing.values()]
  const [one, other] = each
  if (one !== undefined) {
    return other === undefined ? { is: 'on a furnace', ...one } : { is: 'on two furnaces', each }
  }
  const last = told.findLast(({ withdrawn }) => withdrawn !== undefined)
  return last === undefined ? { is: 'on none yet' } : { is: 'withdrawn', tag: last }
}

/** The tags on a furnace, each code once, oldest first. */
export function tagsOn(file: TeamFile, furnaceId: string): Tag[] {
  const tags = ofFurnace(file, file.tags, furnaceId)
  return tags.filter(({ body }, place) => tags.findIndex((each) => each.body.code === body.code) === place)
}
