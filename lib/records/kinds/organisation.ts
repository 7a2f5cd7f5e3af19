import '../withoutEval'
import { z } from 'zod'
import { callSources } from '@/lib/catalogue/sources'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { withholdable } from '../withholdable'

/** Whom the team rings: a maker’s technical line, or a distributor’s counter. */
export const organisationBody = z.strictObject({
  name: line('The organisation’s name', 120),
  source: z.enum(callSources, 'Say whether it is the maker’s technical line or a distributor.'),
  /** The makers that it answers for. */
  makerIds: z.array(recordId).max(100),
  number: line('The number', 60).optional(),
  note: note.optional(),
})

export type OrganisationBody = z.infer<typeof organisationBody>

export const organisation = defineKind<OrganisationBody>({
  kind: 'organisation',
  version: 1,
  versions: { 1: organisationBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => body.makerIds,
  refusedBy: (body, lookup) =>
    body.makerIds.every((id) => lookup(id)?.kind === 'maker')
      ? undefined
      : {
          rule: 'an organisation answers for makers',
          sentence: 'A maker that it names is no maker. Choose it from the list, or add it first.',
        },
  mayWithhold: withholdable.organisation,
})
