import '../withoutEval'
import { z } from 'zod'
import { actions } from '@/lib/core/vocabulary'
import { defineKind } from '../envelope'
import { limitKind, line, magnitude, recordId } from '../fields'

/** A dispute is settled by new evidence only: factory support with a reference, or the maker's current page. */
export const settlementBody = z.strictObject({
  positionId: recordId,
  action: z.enum(actions),
  pascals: magnitude,
  limit: limitKind,
  evidenceReportId: recordId,
  /** The reports that are overruled. They stay readable. */
  overruledReportIds: z.array(recordId).min(1, 'Name the reports that are overruled.').max(100),
  reason: line('The reason', 500),
})

export type SettlementBody = z.infer<typeof settlementBody>

export const settlement = defineKind<SettlementBody>({
  kind: 'settlement',
  version: 1,
  versions: { 1: settlementBody },
  mayAdd: ['manager', 'dispatcher'],
  maySee: ['manager', 'dispatcher', 'technician'],
  refersTo: (body) => [body.positionId, body.evidenceReportId, ...body.overruledReportIds],
  refusedBy: (body, lookup) => {
    const evidence = lookup(body.evidenceReportId)
    const proof = evidence?.body.proof as { kind: string } | undefined
    const settles =
      evidence?.kind === 'report' &&
      ((evidence.body.source === 'factory support' && proof?.kind === 'call reference') ||
        (evidence.body.source === 'current literature' &&
          (proof?.kind === 'document' || proof?.kind === 'photo')))
    if (!settles) {
      return {
        rule: 'a dispute needs new evidence',
        sentence:
          'Only factory technical support with a reference, or a page of the maker’s current literature, settles a dispute. ' +
          'Add that report first, then settle with it.',
      }
    }
    if (body.overruledReportIds.includes(body.evidenceReportId)) {
      return {
        rule: 'a dispute needs new evidence',
        sentence:
          'The report that settles the dispute cannot be among the overruled ones. Take it off that list.',
      }
    }
    return undefined
  },
  mayWithhold: [],
})
