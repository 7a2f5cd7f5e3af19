import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { whyNotOfCase } from '../ofCase'
import { withholdable } from '../withholdable'

/** One time that somebody went there. Findings, readings and an ending belong to a visit. */
export const visitBody = z.strictObject({
  caseId: recordId,
  on: day,
  /** The licence under which the work is done, where the law asks for one. */
  licence: line('The licence', 60).optional(),
  /** The weather, because blocked and frozen vents come and go with it. */
  weather: line('The weather', 120).optional(),
  note: note.optional(),
})

export type VisitBody = z.infer<typeof visitBody>

export const visit = defineKind<VisitBody>({
  kind: 'visit',
  version: 1,
  versions: { 1: visitBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.caseId],
  refusedBy: (body, lookup) => whyNotOfCase(body, lookup),
  happenedOn: ['on'],
  mayWithhold: withholdable.visit,
})
