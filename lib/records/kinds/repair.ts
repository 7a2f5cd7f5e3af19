import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { withholdable } from '../withholdable'

/** What was done to a furnace, and the part that was fitted, if one was. Only a factory part can be fitted. */
export const repairBody = z.strictObject({
  furnaceId: recordId,
  positionId: recordId.optional(),
  done: line('What was done', 500),
  fittedPart: recordId.optional(),
  on: day,
  note: note.optional(),
})

export type RepairBody = z.infer<typeof repairBody>

export const repair = defineKind<RepairBody>({
  kind: 'repair',
  version: 1,
  versions: { 1: repairBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId, body.positionId, body.fittedPart].filter((id) => id !== undefined),
  refusedBy: (body, lookup) =>
    body.fittedPart !== undefined && lookup(body.fittedPart)?.body.class !== 'factory'
      ? {
          rule: 'no general-purpose switch',
          sentence:
            'Only a part that the maker names for this furnace can be recorded as a repair. Order the factory part. ' +
            'It is already in? Record it as found fitted, when and by whom.',
        }
      : undefined,
  mayWithhold: withholdable.repair,
})
