import type { RecordEnvelope } from './envelope'

/** What stands in place of a field that a manager withheld. */
export const withheldText = '[withheld]'

/**
 * The record without what is withheld: each named field of the body that is there becomes `[withheld]`.
 *
 * @example redact(furnace, ['note'])   // its body.note is now '[withheld]', all else is as it was
 */
export function redact<Envelope extends Pick<RecordEnvelope, 'body'>>(
  record: Envelope,
  fields: readonly string[],
): Envelope {
  const body = Object.fromEntries(
    Object.entries(record.body).map(([field, said]) => [field, fields.includes(field) ? withheldText : said]),
  )
  return { ...record, body }
}
