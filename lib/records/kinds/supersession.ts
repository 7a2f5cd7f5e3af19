import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { day, line, recordId } from '../fields'

/** The maker replaced one part number by another. The rating is never carried over with it. */
export const supersessionBody = z
  .strictObject({
    oldPartId: recordId,
    newPartId: recordId,
    setting: z.enum(['same', 'changed', 'not stated']),
    /** The new number is a kit (switch with hose, orifice or label). */
    kit: z.boolean(),
    statedIn: line('Where it is stated', 200),
    on: day.optional(),
  })
  .refine((body) => body.oldPartId !== body.newPartId, {
    path: ['newPartId'],
    message: 'A part cannot replace itself. Choose the newer number.',
  })

export type SupersessionBody = z.infer<typeof supersessionBody>

export const supersession = defineKind<SupersessionBody>({
  kind: 'supersession',
  version: 1,
  versions: { 1: supersessionBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.oldPartId, body.newPartId],
  refusedBy: (body, lookup) =>
    lookup(body.oldPartId)?.body.class === 'factory' && lookup(body.newPartId)?.body.class !== 'factory'
      ? {
          rule: 'no general-purpose switch',
          sentence:
            'Only a factory part supersedes a factory part. Ask the maker which number is current, and record first where it is listed.',
        }
      : undefined,
  mayWithhold: [],
})
