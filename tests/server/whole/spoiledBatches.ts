import fc from 'fast-check'
import { mostBatchBytes } from '@/lib/server/http/bodyLimit'
import { jsonText, oddKeys, oddValue } from './oddJson'
import { type Scene, spoiledRecord } from './spoiledRecords'

/** When a batch was sent, by the clock of its device: as a rule just after its records were said. */
const moments = fc.oneof(
  { weight: 20, arbitrary: fc.constant(new Date(Date.now() + 60_000).toISOString()) },
  { weight: 1, arbitrary: fc.constantFrom('0001-01-01T00:00:00Z', '9999-12-31T00:00:00Z') },
  { weight: 1, arbitrary: oddValue },
)

/** None, some, as many as may be sent at once, and one more. */
const plainNumbers = fc
  .oneof(fc.constantFrom(0, 1000, 1001), fc.nat(100))
  .map((count) => Array.from({ length: count }, (_, at) => at))

/** Batches of spoiled records, as JSON; seldom one that is too long, too heavy, or no batch. */
export function spoiledBatches(scene: Scene): fc.Arbitrary<string> {
  const record = spoiledRecord(scene)
  const few = fc.array(record, { minLength: 1, maxLength: 3 })
  const records = fc.oneof(
    { weight: 240, arbitrary: few },
    // The same ids twice in one batch.
    { weight: 24, arbitrary: few.map((some) => [...some, ...some]) },
    { weight: 24, arbitrary: oddValue },
    { weight: 2, arbitrary: plainNumbers },
  )
  const batch = fc.record({ sentAt: moments, records }).map(jsonText)
  const added = fc
    .tuple(moments, few, fc.constantFrom(...oddKeys), oddValue)
    .map(([sentAt, some, key, odd]) => jsonText({ sentAt, records: some, [key]: odd }))
  const heavy = batch.map((text) => text.padEnd(mostBatchBytes + 1))
  return fc.oneof(
    { weight: 400, arbitrary: batch },
    { weight: 40, arbitrary: added },
    { weight: 1, arbitrary: heavy },
  )
}
