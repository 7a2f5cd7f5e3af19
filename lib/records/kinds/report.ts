import '../withoutEval'
import { z } from 'zod'
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
import { defineKind, type Lookup, type Refusal, roles } from '../envelope'
import { codeRange, day, elevationBand, line, magnitude, note, pressureUnit, recordId } from '../fields'
import { isSame } from '../ofCase'
import { withholdable } from '../withholdable'

export const proof = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('photo'), photoId: recordId }),
  z.strictObject({
    kind: z.literal('document'),
    name: line('The document’s name', 200),
    page: line('The page', 40),
    edition: line('The edition', 60).optional(),
  }),
  z.strictObject({
    kind: z.literal('call reference'),
    organisation: line('The organisation', 120),
    reference: line('The reference', 80),
  }),
])

/** One person's record of what one source says about one rating. What was printed is kept letter for letter. */
export const reportBody = z
  .strictObject({
    positionId: recordId,
    /** The furnace it was made on. A range left unstated covers only that furnace. */
    furnaceId: recordId.optional(),
    asWritten: line('What the source says', 200),
    action: z.enum(actions),
    limit: z.enum(limitKinds),
    pascals: magnitude,
    sense: z.enum(senses),
    toleranceAbove: magnitude.optional(),
    toleranceBelow: magnitude.optional(),
    unit: pressureUnit,
    decimals: z.int().min(0).max(6),
    kind: z.enum(switchKinds),
    between: z.enum(betweens),
    tap: z.enum(taps),
    stage: z.enum(stages),
    source: z.enum(sourceKinds),
    proof: proof.optional(),
    readBack: z.boolean().optional(),
    /** Another person who read the same photo, or listened to the same call. */
    secondPersonId: line('The second person', 64).optional(),
    /** Reports of one origin (a call, a document page, a photo, a switch in hand) count once. */
    origin: line('The origin', 120).optional(),
    /** Who said it, as far as it matters: a role, a department, a first name. */
    saidBy: line('Who said it', 120).optional(),
    /** The day on which the source said it, where that is not the day of the record. */
    saidOn: day.optional(),
    /** The part whose label was read. */
    readOffPart: recordId.optional(),
    /** The part number that the source names. */
    partNumber: line('The part number', 40).optional(),
    revisionRange: codeRange.optional(),
    serialRange: codeRange.optional(),
    elevationBand: elevationBand.optional(),
    /** The gauge of a bench check. */
    gaugeId: recordId.optional(),
    /** The request that this report answers. */
    requestId: recordId.optional(),
    note: note.optional(),
  })
  .refine((report) => report.action !== 'opens' || report.kind !== 'sensor', {
    path: ['kind'],
    message: 'A sensor has no contact that opens. Record its table as a note.',
  })
  .refine((report) => report.source !== 'factory switch label' || report.readOffPart !== undefined, {
    path: ['readOffPart'],
    message:
      'A label counts as the factory switch’s only with its part. Name the part, or choose “switch of unknown origin”.',
  })

export type ReportBody = z.infer<typeof reportBody>

/**
 * Why a part is not this furnace's factory part: another maker lists it, and nobody has recorded that it is listed for
 * this switch.
 */
function whyNotTheMakers(
  { positionId }: ReportBody,
  { makerId, positionIds }: Record<string, unknown>,
  lookup: Lookup,
): Refusal | undefined {
  const rangeId = lookup(positionId)?.body.rangeId
  const makersOwn = typeof rangeId === 'string' ? lookup(rangeId)?.body.makerId : undefined
  const isListed = Array.isArray(positionIds) && positionIds.some((id) => isSame(id, positionId, lookup))
  return isListed || typeof makersOwn !== 'string' || isSame(makerId, makersOwn, lookup)
    ? undefined
    : {
        rule: 'a factory label needs a factory part',
        sentence:
          'This part is one of another maker, and nobody has recorded that it is listed for this switch, so its label is one of a switch of unknown origin. ' +
          'Choose that source, or record first where the furnace’s maker lists the part.',
      }
}

export const report = defineKind<ReportBody>({
  kind: 'report',
  version: 1,
  versions: { 1: reportBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) =>
    [
      body.positionId,
      body.furnaceId,
      body.readOffPart,
      body.gaugeId,
      body.requestId,
      body.proof?.kind === 'photo' ? body.proof.photoId : undefined,
    ].filter((id) => id !== undefined),
  refusedBy: (body, lookup) => {
    if (body.proof?.kind === 'photo' && lookup(body.proof.photoId)?.kind !== 'photo') {
      return {
        rule: 'a photo is its proof',
        sentence: 'The photo that it names is none. Take the photo again, or save the report without it.',
      }
    }
    const part = body.readOffPart === undefined ? undefined : lookup(body.readOffPart)?.body
    const partClass = part?.fieldAdjustable === true ? 'general-purpose' : part?.class
    if (partClass === 'general-purpose') {
      return {
        rule: 'no general-purpose switch',
        sentence:
          'A number read off an adjustable or general-purpose switch says nothing about this furnace’s rating. ' +
          'It is already in? Record it as found fitted, when and by whom.',
      }
    }
    if (body.source === 'factory switch label' && partClass !== 'factory') {
      return {
        rule: 'a factory label needs a factory part',
        sentence:
          'This part is not recorded as a factory part, so its label is one of a switch of unknown origin. ' +
          'Choose that source, or record first where the maker lists the part.',
      }
    }
    return body.source === 'factory switch label' ? whyNotTheMakers(body, part ?? {}, lookup) : undefined
  },
  happenedOn: ['saidOn'],
  mayWithhold: withholdable.report,
})
