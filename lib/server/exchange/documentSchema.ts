import { z } from 'zod'
import { recordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { documentRating } from './documentRating'
import { documentEntry, documentHead, documentVersion, schemaFileName } from './logDocument'

/**
 * The schema of the exported document as JSON Schema (draft 2020-12), made from the very schemas that judge records:
 * every kind and every version of it that was ever released.
 */
export function documentSchema(): object {
  const ofKind = Object.values(recordKinds).flatMap(({ kind, versions }) =>
    Object.entries(versions).map(([version, body]) =>
      recordEnvelope.extend({ kind: z.literal(kind), version: z.literal(Number(version)), body }),
    ),
  )
  const record = z.union(ofKind)
  const whole = documentHead.extend({
    version: z.literal(documentVersion),
    entries: z.array(documentEntry.extend({ record })),
    ratings: z.array(documentRating),
  })
  return { $id: schemaFileName, title: 'Inchwater log', ...z.toJSONSchema(whole, { io: 'input' }) }
}
