import '../withoutEval'
import { z } from 'zod'
import { isTagCode } from '@/lib/core/tag'
import { defineKind, roles } from '../envelope'
import { recordId } from '../fields'

/**
 * A tag is stuck on a furnace: its printed code, which means nothing to a stranger, leads to that furnace from now on.
 * A tag that is lost, or was replaced, is withdrawn.
 */
export const tagBody = z.strictObject({
  code: z
    .string('The tag’s code is missing. Scan the tag, or type what is printed on it.')
    .refine(isTagCode, 'This is not the code of a tag. Scan the tag again, or type what is printed on it.'),
  furnaceId: recordId,
})

export type TagBody = z.infer<typeof tagBody>

export const tag = defineKind<TagBody>({
  kind: 'tag',
  version: 1,
  versions: { 1: tagBody },
  // Whoever stands at the furnace sticks it on; printing sheets of them is the manager's.
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId],
  refusedBy: (body, lookup) =>
    lookup(body.furnaceId)?.kind === 'furnace'
      ? undefined
      : {
          rule: 'a tag is on a furnace',
          sentence: 'What it names is no furnace. Scan the tag again and choose its furnace.',
        },
  mayWithhold: [],
})
