import '../withoutEval'
import { z } from 'zod'
import { dangerValueOf } from '@/lib/catalogue/findings'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { whyNotAfterEnding, whyNotOfCase } from '../ofCase'
import { whyNoSuchFinding } from '../trade'
import { withholdable } from '../withholdable'

/**
 * Something observed or ruled out. The newest record of a finding in a case counts; taking one back is a withdrawal,
 * after which the one before it counts again, if there is one.
 */
export const findingBody = z.strictObject({
  caseId: recordId,
  visitId: recordId,
  /** Id of a finding in the catalogue. */
  finding: line('The finding', 60),
  value: line('What was seen', 60),
  note: note.optional(),
})

export type FindingBody = z.infer<typeof findingBody>

export const finding = defineKind<FindingBody>({
  kind: 'finding',
  version: 1,
  versions: { 1: findingBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.caseId, body.visitId],
  refusedBy: (body, lookup, said) =>
    whyNotOfCase(body, lookup) ??
    whyNoSuchFinding(body.finding, body.value) ??
    // A danger is taken in whenever it is said.
    (dangerValueOf(body.finding, body.value) === undefined
      ? whyNotAfterEnding(body.visitId, lookup, said.saidAt)
      : undefined),
  mayWithhold: withholdable.finding,
})
