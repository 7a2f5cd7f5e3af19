import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { tagsOn } from '@/lib/records/view/tags'

/** What the manager asks for. */
export type TagForm = {
  what: 'blank' | 'furnaces'
  /** How many blank ones, as typed. */
  count: string
  /** One furnace by its id, or empty for those of the branch. */
  furnaceId: string
  branch: string
  withoutTag: boolean
  site: boolean
}

export const freshTagForm = (furnaceId: string): TagForm => ({
  what: furnaceId === '' ? 'blank' : 'furnaces',
  count: '24',
  furnaceId,
  branch: '',
  withoutTag: furnaceId === '',
  site: false,
})

/** So many fill eight sheets of paper; a longer run of one printer is hardly looked through. */
const mostAtOnce = 192

/** How many blank tags are asked for; undefined when that is no number of tags. */
export function countOf({ count }: TagForm): number | undefined {
  const number = /^\d{1,3}$/.test(count.trim()) ? Number(count) : 0
  return number >= 1 && number <= mostAtOnce ? number : undefined
}

/** The furnaces that tags are asked for, in the order of their sites. */
export function furnacesFor(file: TeamFile, form: TagForm): Entry<FurnaceBody>[] {
  return counting(file.furnaces)
    .filter(({ id, body }) =>
      form.furnaceId === ''
        ? form.branch === '' || body.branch === form.branch
        : id === file.keptId(form.furnaceId),
    )
    .filter(({ id }) => !form.withoutTag || tagsOn(file, id).length === 0)
    .toSorted((one, other) => one.body.siteLabel.localeCompare(other.body.siteLabel, 'en'))
    .slice(0, mostAtOnce)
}

/** The branches that furnaces are on file for, by name. */
export const branchesOf = (file: TeamFile): string[] =>
  [...new Set(counting(file.furnaces).flatMap(({ body }) => body.branch ?? []))].toSorted((one, other) =>
    one.localeCompare(other, 'en'),
  )
