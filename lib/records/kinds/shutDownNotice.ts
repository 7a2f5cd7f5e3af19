import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { whyNotOfCase } from '../ofCase'
import { withholdable } from '../withholdable'

/** A furnace is left off: what was found, who was told, and what has to be so before anybody lights it again. */
export const shutDownNoticeBody = z.strictObject({
  furnaceId: recordId,
  caseId: recordId.optional(),
  on: day,
  found: line('What was found', 500),
  doNotRelightUntil: line('What has to be done first', 300),
  gas: z.enum(['off', 'on', 'not known']),
  power: z.enum(['off', 'on', 'not known']),
  tagged: z.boolean(),
  /** Who was told, by what they are to the house: owner, tenant, caretaker. No name is needed. */
  told: line('Who was told', 120).optional(),
  toldAt: z.iso.datetime({ offset: true, error: 'Say when they were told: date and time.' }).optional(),
  writtenNotice: z.boolean(),
  /** The authority or the gas supplier, where the law asks for it. */
  authority: z.enum(['told', 'not asked for here', 'not yet told']).optional(),
  authorityWho: line('Who was told', 120).optional(),
  /** How the house stays warm and its pipes free of frost meanwhile. */
  heatAndFrost: line('The arrangement for heat and frost', 300).optional(),
  note: note.optional(),
})

export type ShutDownNoticeBody = z.infer<typeof shutDownNoticeBody>

export const shutDownNotice = defineKind<ShutDownNoticeBody>({
  kind: 'shut-down notice',
  version: 1,
  versions: { 1: shutDownNoticeBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId, body.caseId].filter((id) => id !== undefined),
  refusedBy: (body, lookup) => whyNotOfCase(body, lookup),
  happenedOn: ['on'],
  mayWithhold: withholdable['shut-down notice'],
})
