import '../withoutEval'
import { z } from 'zod'
import { readingSituationIds } from '@/lib/catalogue/fromReadings/situations'
import { movements } from '@/lib/catalogue/fromReadings/types'
import {
  actions,
  betweens,
  limitKinds,
  senses,
  sourceKinds,
  stages,
  switchKinds,
  taps,
} from '@/lib/core/vocabulary'
import { defineKind, roles } from '../envelope'
import { line, magnitude, note, recordId } from '../fields'
import { whyNotAfterEnding, whyNotOfCase } from '../ofCase'
import { whyNoPosition } from '../ofPosition'
import { withholdable } from '../withholdable'

const value = {
  limit: z.enum(limitKinds),
  pascals: magnitude,
  toleranceAbove: magnitude.optional(),
  toleranceBelow: magnitude.optional(),
}

/** The limit that the reading was held against, as it stood at that moment: an auditor asks for that one. */
const limitThen = z.strictObject({
  action: z.enum(actions),
  ...value,
  /** In dispute: the other values that were possible. */
  rivals: z.array(z.strictObject(value)).max(40).optional(),
  /** What the rating held for, as far as its sources said; what they left open is the position's. */
  kind: z.enum(switchKinds).optional(),
  between: z.enum(betweens).optional(),
  tap: z.enum(taps).optional(),
  stage: z.enum(stages).optional(),
  sense: z.enum(senses).optional(),
  level: z.enum(['Verified', 'Supported', 'Unverified', 'In dispute']),
  sources: z.array(z.enum(sourceKinds)).max(20),
  reportIds: z.array(recordId).max(200),
})

/** Samples from one manometer at one place in one state. All pressures are magnitudes in pascals. */
export const readingBody = z
  .strictObject({
    furnaceId: recordId,
    caseId: recordId.optional(),
    visitId: recordId.optional(),
    positionId: recordId.optional(),
    samples: z.array(magnitude).min(1, 'Type what the gauge shows.').max(100),
    lowest: magnitude.optional(),
    highest: magnitude.optional(),
    sense: z.enum(senses),
    kind: z.enum(switchKinds),
    between: z.enum(betweens),
    tap: z.enum(taps),
    stage: z.enum(stages),
    door: z.enum(['on', 'off']),
    secondsWatched: z.number().min(0).max(86_400).optional(),
    averaging: z.boolean().optional(),
    /** How the display moved while it was watched. */
    movement: z.enum(movements).optional(),
    separateStarts: z.boolean().optional(),
    phase: z.enum(['rest', 'pre-purge', 'at make', 'after light-off', 'steady hot']),
    contacts: z.enum(['open', 'closed', 'not read']),
    /** What was done to the furnace just before, for instance the vent opened. */
    situation: z.enum(readingSituationIds),
    /** Whether the repair had been made. */
    when: z.enum(['as found', 'after repair']),
    byTeeAtTheSwitch: z.boolean(),
    gaugeId: recordId.optional(),
    zeroed: z.boolean(),
    /** What was typed, letter for letter. */
    asTyped: line('The reading', 2000),
    against: z.array(limitThen).max(3).optional(),
    note: note.optional(),
  })
  .refine((body) => (body.caseId === undefined) === (body.visitId === undefined), {
    path: ['visitId'],
    message: 'A reading of a case belongs to one of its visits. Name both, or neither.',
  })
  .refine((body) => body.lowest === undefined || body.highest === undefined || body.lowest <= body.highest, {
    path: ['lowest'],
    message: 'The lowest value is above the highest. Swap the two.',
  })

export type ReadingBody = z.infer<typeof readingBody>

export const reading = defineKind<ReadingBody>({
  kind: 'reading',
  version: 1,
  versions: { 1: readingBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) =>
    [
      body.furnaceId,
      body.caseId,
      body.visitId,
      body.positionId,
      body.gaugeId,
      ...(body.against ?? []).flatMap((limit) => limit.reportIds),
    ].filter((id) => id !== undefined),
  refusedBy: (body, lookup, said) =>
    whyNotOfCase(body, lookup) ??
    whyNoPosition(body.positionId, lookup) ??
    (body.visitId === undefined ? undefined : whyNotAfterEnding(body.visitId, lookup, said.saidAt)),
  mayWithhold: withholdable.reading,
})
