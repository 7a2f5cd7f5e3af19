import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'

export const partClasses = ['factory', 'general-purpose', 'not known'] as const

/**
 * A switch by its part number. Factory means: named by the furnace's maker, and somebody says where. Adjustable in
 * the field, or named by no maker for the furnace, is general-purpose and may never be fitted as a repair.
 */
export const partBody = z
  .strictObject({
    partNumber: line('The part number', 40),
    class: z.enum(partClasses),
    fieldAdjustable: z.boolean(),
    makerId: recordId.optional(),
    /** The positions that the maker lists this part for. */
    positionIds: z.array(recordId).max(200),
    /** Where the maker lists it: the document, page or system. */
    listedIn: line('Where it is listed', 200).optional(),
    note: note.optional(),
  })
  .refine((part) => !(part.fieldAdjustable && part.class === 'factory'), {
    path: ['class'],
    message: 'A switch that is adjustable in the field is general-purpose, whoever sells it.',
  })
  .refine((part) => part.class !== 'factory' || (part.makerId !== undefined && part.listedIn !== undefined), {
    path: ['listedIn'],
    message: 'A factory part needs the maker who lists it, and where. Without both its class is not known.',
  })

export type PartBody = z.infer<typeof partBody>

export const part = defineKind<PartBody>({
  kind: 'part',
  version: 1,
  versions: { 1: partBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [...(body.makerId === undefined ? [] : [body.makerId]), ...body.positionIds],
  mayWithhold: [],
})
