import '../withoutEval'
import { z } from 'zod'
import type { ReadingSituation } from '@/lib/catalogue/fromReadings/situations'
import { defineKind, roles } from '../envelope'
import { day, note, recordId } from '../fields'
import { isSame } from '../ofCase'
import { withholdable } from '../withholdable'

export const baselineOccasions = ['annual service', 'after a proven repair'] as const

/** As in service, or with each port of a two-port switch read to the room, which tells where it is held back. */
const situations: readonly ReadingSituation[] = [
  'as found',
  'calm',
  'first port to the room',
  'second port to the room',
]

/** Says of a reading that it was taken on a healthy furnace: what "expected" means for that furnace. */
export const baselineBody = z.strictObject({
  furnaceId: recordId,
  readingId: recordId,
  occasion: z.enum(baselineOccasions, 'Say on which occasion the furnace was found healthy.'),
  on: day,
  note: note.optional(),
})

export type BaselineBody = z.infer<typeof baselineBody>

export const baseline = defineKind<BaselineBody>({
  kind: 'baseline',
  version: 1,
  versions: { 1: baselineBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId, body.readingId],
  refusedBy: (body, lookup) => {
    const reading = lookup(body.readingId)
    if (reading?.kind !== 'reading' || !isSame(reading.body.furnaceId, body.furnaceId, lookup))
      return {
        rule: 'a baseline is a reading',
        sentence: 'A baseline is a reading of the same furnace. Record the reading first.',
      }
    return situations.some((situation) => situation === reading.body.situation)
      ? undefined
      : {
          rule: 'a baseline is a reading in service',
          sentence:
            'This reading was taken with something opened or taken off, so it is no healthy running value. Read again as in service.',
        }
  },
  happenedOn: ['on'],
  mayWithhold: withholdable.baseline,
})
