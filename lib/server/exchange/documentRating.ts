import { z } from 'zod'
import { ucumCode } from '@/lib/core/pressure'
import { actions, limitKinds, senses, sourceKinds } from '@/lib/core/vocabulary'

const about = {
  positionId: z.string(),
  maker: z.string(),
  range: z.string(),
  models: z.array(z.string()),
  position: z.string(),
  action: z.enum(actions),
  inDisputeFor: z
    .array(z.string())
    .describe('Furnaces on file, elevations, revisions, serials and parts for which it is in dispute'),
}

const datedSource = {
  reportId: z.string(),
  source: z.enum(sourceKinds),
  words: z.string().describe('The source with document and page, or organisation and reference'),
  saidAt: z.string(),
  holdsFor: z.string().describe('Which elevations, revisions and serials it says it covers'),
}

const shown = z.strictObject({
  ...about,
  level: z.enum(['Verified', 'Supported', 'Unverified', 'In dispute']),
  pascals: z.number(),
  unit: z.literal(ucumCode.Pa),
  inchesOfWater: z.number(),
  inchesOfWaterUnit: z.literal(ucumCode.inH2O),
  limit: z.enum(limitKinds),
  toleranceAbovePascals: z.number().optional(),
  toleranceBelowPascals: z.number().optional(),
  sense: z.enum(senses),
  between: z.string(),
  stage: z.string(),
  probability: z.number(),
  sources: z.array(z.strictObject({ ...datedSource, proof: z.string().optional() })),
  leads: z.array(z.strictObject({ ...datedSource, agrees: z.boolean() })),
  rivals: z.array(
    z.strictObject({
      pascals: z.number(),
      sources: z.array(z.strictObject(datedSource)).min(1),
      slip: z.string().optional(),
    }),
  ),
})

/** In the place of a number: what is needed of the furnace before there is one. */
const needing = z.strictObject({
  ...about,
  needs: z.array(z.enum(['elevation', 'revision', 'serial', 'part number'])).min(1),
})

/** A rating as worked out on the day of the export, for other programs. It is not taken in: it is worked out anew. */
export const documentRating = z.union([shown, needing])
