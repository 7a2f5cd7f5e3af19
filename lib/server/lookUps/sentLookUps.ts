import { z } from 'zod'
import { recordId } from '@/lib/records/fields'
import { type LookUpMark, mostLookUps } from '@/lib/records/lookUps'

const lookUp: z.ZodType<LookUpMark> = z.strictObject({
  // Random, and not made from the time: it must say nothing of who looked when.
  mark: z.uuidv4('A look-up needs a random mark.'),
  positionId: recordId,
  day: z.iso.date('The day of a look-up is written 2026-01-12.'),
})

/** What a device sends. */
export const sentLookUps = z.strictObject({
  lookUps: z
    .array(lookUp)
    .min(1, 'Send at least one look-up.')
    .max(mostLookUps, `Send at most ${mostLookUps} look-ups at a time.`),
})
