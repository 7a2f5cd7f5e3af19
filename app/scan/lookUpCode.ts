import { type FindIndex, find, type Match } from '@/lib/core/find'
import { codeInTagLink, readTagCode } from '@/lib/core/tag'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type TagStanding, tagStanding } from '@/lib/records/view/tags'

/** What a code leads to. */
export type LookedUp =
  | { is: 'tag'; code: string; standing: TagStanding }
  /**
   * `same`: it is on file as it was read, but for dashes, blanks and look-alikes. `near`: something else, near it.
   * `misread`: why it is no tag's code, where it could have been meant for one.
   */
  | { is: 'number'; same: readonly Match[]; near: readonly Match[]; misread?: string }

/** Below this score a text on file is what was read; see lib/core/find. */
const sameBelow = 0.02
const listed = 6

/** Looks up what was read: a furnace tag by its link or by the code printed on it, or any number on file. */
export function lookUpCode(file: TeamFile, index: FindIndex, text: string): LookedUp {
  const typed = readTagCode(text)
  const code = codeInTagLink(text) ?? (typed.ok ? typed.value : undefined)
  if (code !== undefined) {
    const standing = tagStanding(file, code)
    // Twelve characters of a part number can be a tag's code by chance: one that is on file is the part.
    if (standing.is !== 'on none yet' || codeInTagLink(text) !== undefined)
      return { is: 'tag', code, standing }
  }
  const matches = find(index, text, listed)
  const same = matches.filter(({ score }) => score < sameBelow)
  if (code !== undefined && same.length === 0) return { is: 'tag', code, standing: { is: 'on none yet' } }
  const misread = !typed.ok && typed.problem.code === 'tag-misread' && same.length === 0
  return {
    is: 'number',
    same,
    near: same.length > 0 ? [] : matches,
    ...(misread ? { misread: typed.problem.message } : {}),
  }
}
