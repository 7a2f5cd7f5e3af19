import './withoutEval'
import { z } from 'zod'

/** What the server says of each record of a batch. One record's answer never depends on another's refusal. */
export const answer = z.discriminatedUnion('outcome', [
  z.object({ id: z.string(), outcome: z.literal('stored'), seq: z.int() }),
  z.object({ id: z.string(), outcome: z.literal('already stored'), seq: z.int() }),
  z.object({ id: z.string(), outcome: z.literal('refused'), rule: z.string(), sentence: z.string() }),
  /** It names records that are not in the log yet. */
  z.object({ id: z.string(), outcome: z.literal('waiting for'), ids: z.array(z.string()) }),
])

export type Answer = z.infer<typeof answer>

export const batchAnswer = z.object({ answers: z.array(answer) })

/** What a device sends: its own clock at sending, and the records in the order in which they were said. */
export const batch = z.object({
  sentAt: z.iso.datetime({ offset: true }),
  records: z.array(z.unknown()).min(1).max(1000),
})
