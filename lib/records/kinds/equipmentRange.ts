import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { codeRange, line, note, recordId } from '../fields'

export const fuels = ['natural gas', 'propane', 'either', 'not stated'] as const
export const heatKinds = ['condensing', 'non-condensing', 'not stated'] as const

/**
 * A range of furnaces that share their switches: one maker, one family, one size or a pattern of sizes.
 * In a model pattern an asterisk stands for any characters and a question mark for one.
 */
export const equipmentRangeBody = z.strictObject({
  makerId: recordId,
  name: line('The name of the range', 80),
  modelPatterns: z
    .array(line('A model pattern', 60))
    .min(1, 'Give at least one model number or pattern.')
    .max(40, 'A range holds at most 40 patterns. Make two ranges.'),
  fuel: z.enum(fuels),
  heat: z.enum(heatKinds),
  revisions: codeRange.optional(),
  serials: codeRange.optional(),
  note: note.optional(),
})

export type EquipmentRangeBody = z.infer<typeof equipmentRangeBody>

export const equipmentRange = defineKind<EquipmentRangeBody>({
  kind: 'equipment range',
  version: 1,
  versions: { 1: equipmentRangeBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.makerId],
  mayWithhold: [],
})
