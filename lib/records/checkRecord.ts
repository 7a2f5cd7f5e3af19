import { dayToCome, dayToComeSentence } from './dayToCome'
import type { Refusal, Saying } from './envelope'
import type { TeamFile } from './fold/teamFile'
import { lookupIn, type SaidBefore } from './lookupIn'
import { recordKinds } from './registry'

/** What is wrong with a body before it is sent: by field, or as the refusal of a rule. */
export type Checked =
  | { ok: true }
  | { ok: false; fields: Readonly<Record<string, string>>; refusal?: Refusal }

/**
 * Judges a body on the device as the server will: by its schema, the permission, and the rules that need other
 * records. The server judges again; this one only speaks sooner.
 * @param earlier records that are said in the same step before this one
 * @throws RangeError if there is no such kind
 */
export function checkRecord(
  kind: string,
  body: Record<string, unknown>,
  file: TeamFile,
  saying: Saying,
  earlier: readonly SaidBefore[] = [],
): Checked {
  const known = recordKinds[kind]
  const schema = known?.versions[known.version]
  if (known === undefined || schema === undefined)
    throw new RangeError(`checkRecord: "${kind}" is no kind of record`)
  const parsed = schema.safeParse(body)
  if (!parsed.success) {
    const fields: Record<string, string> = {}
    for (const issue of parsed.error.issues) fields[issue.path.join('.')] ??= issue.message
    return { ok: false, fields }
  }
  if (!known.mayAdd.includes(saying.role)) {
    const refusal = {
      rule: 'who may add what',
      sentence: `A ${saying.role} may not add a ${kind}. Ask a ${known.mayAdd.join(' or a ')}.`,
    }
    return { ok: false, fields: {}, refusal }
  }
  const toCome = dayToCome(known, body, saying.saidAt)
  if (toCome !== undefined) return { ok: false, fields: { [toCome]: dayToComeSentence } }
  const refusal = known.refusedBy?.(body, lookupIn(file, earlier), saying)
  return refusal === undefined ? { ok: true } : { ok: false, fields: {}, refusal }
}
