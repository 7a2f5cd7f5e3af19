import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, recordId } from '../fields'
import { withholdableFields } from '../withholdable'

/** A manager takes personal data out of a record, with a reason. The record, its hash and its number stay. */
export const withholdingBody = z.strictObject({
  record: recordId,
  fields: z.array(z.string().min(1).max(40)).min(1, 'Name the fields to withhold.').max(20),
  reason: line('The reason', 500),
})

export type WithholdingBody = z.infer<typeof withholdingBody>

export const withholding = defineKind<WithholdingBody>({
  kind: 'withholding',
  version: 1,
  versions: { 1: withholdingBody },
  mayAdd: ['manager'],
  maySee: roles,
  refersTo: (body) => [body.record],
  refusedBy: (body, lookup) => {
    const kind = lookup(body.record)?.kind ?? ''
    const allowed = withholdableFields(kind)
    const refused = body.fields.filter((field) => !allowed.includes(field))
    return refused.length === 0
      ? undefined
      : {
          rule: 'only personal data can be withheld',
          sentence:
            `Of a ${kind} these fields cannot be withheld: ${refused.join(', ')}. ` +
            (allowed.length === 0
              ? 'It holds no personal data; withdraw it instead.'
              : `These can: ${allowed.join(', ')}.`),
        }
  },
  mayWithhold: [],
})
