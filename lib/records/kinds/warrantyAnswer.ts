import '../withoutEval'
import { z } from 'zod'
import { mostMinorUnits } from '@/lib/core/money'
import { defineKind, type Lookup, type Refusal, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { mayRecordWarranty, warrantyOutcomes } from '../warrantyTerms'
import { withholdable } from '../withholdable'

/**
 * What a distributor or maker answered about a part that went back. A later answer about the same part of the same
 * repair counts instead of an earlier one; both stay readable.
 */
export const warrantyAnswerBody = z
  .strictObject({
    /** The repair in which the part came out. */
    repairId: recordId,
    /** The number on the part that went back, letter for letter. */
    partReturned: line('The part that went back', 80),
    outcome: z.enum(warrantyOutcomes, 'Say what became of it: credited, denied, or waiting.'),
    /** What was credited, or asked for and not credited, in the smallest unit of the currency. */
    amountMinorUnits: z
      .int('An amount is a whole number of the smallest unit.')
      .min(0, 'An amount is never negative: say apart whether it was credited.')
      .max(mostMinorUnits, 'No part costs as much as that. Check the amount.')
      .optional(),
    /** By ISO 4217. */
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, 'Write the currency as its three letters, for instance USD.')
      .optional(),
    organisationId: recordId.optional(),
    /** Who answered, where no organisation on file did, or the person there. */
    answeredBy: line('Who answered', 120).optional(),
    reasonGiven: line('The reason given', 500).optional(),
    /** The day of the answer; while it is waiting, the day the part went back. */
    on: day,
    reference: line('The reference', 80).optional(),
    note: note.optional(),
  })
  .refine(({ amountMinorUnits, currency }) => (amountMinorUnits === undefined) === (currency === undefined), {
    path: ['currency'],
    message: 'An amount has its currency. Give both, or neither.',
  })
  .refine(({ organisationId, answeredBy }) => organisationId !== undefined || answeredBy !== undefined, {
    path: ['answeredBy'],
    message: 'Say whose answer it is: choose the organisation, or type who it was.',
  })

export type WarrantyAnswerBody = z.infer<typeof warrantyAnswerBody>

/** Why it cannot be about the repair that it names: that is none, or it fitted no part. */
function whyNotOfRepair(repairId: string, lookup: Lookup): Refusal | undefined {
  const found = lookup(repairId)
  const fitted = found?.kind === 'repair' && (found.body.fittedPart ?? found.body.parts) !== undefined
  return fitted
    ? undefined
    : {
        rule: 'a warranty answer is about a part that was replaced',
        sentence:
          'The repair that it names fitted no part, so none went back. Choose the repair that did, or record it first.',
      }
}

export const warrantyAnswer = defineKind<WarrantyAnswerBody>({
  kind: 'warranty answer',
  version: 1,
  versions: { 1: warrantyAnswerBody },
  mayAdd: mayRecordWarranty,
  maySee: roles,
  refersTo: ({ repairId, organisationId }) => [repairId, organisationId].filter((id) => id !== undefined),
  refusedBy: ({ repairId, organisationId }, lookup) =>
    whyNotOfRepair(repairId, lookup) ??
    (organisationId === undefined || lookup(organisationId)?.kind === 'organisation'
      ? undefined
      : {
          rule: 'an organisation answers a warranty claim',
          sentence:
            'Whom it names as answering is no organisation. Choose it from the list, or type who it was.',
        }),
  happenedOn: ['on'],
  mayWithhold: withholdable['warranty answer'],
})
