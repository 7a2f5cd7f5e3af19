import type { WithholdingBody } from '../kinds/withholding'
import { redact } from '../redact'
import type { HeldRecord } from './entry'

/**
 * The records that a device must blank because a manager has withheld something of them since it fetched them. The
 * server blanks them in place and never sends them again, so the withholding itself is what tells the device.
 *
 * @param fetched what came just now, in the order of the log
 * @param held looks up what is on the device already
 */
export function withheldSince(
  fetched: readonly HeldRecord[],
  held: (id: string) => HeldRecord | undefined,
): HeldRecord[] {
  const blanked = new Map<string, HeldRecord>()
  const inPage = new Map(fetched.map((record) => [record.id, record]))
  for (const { id, kind, body } of fetched) {
    if (kind !== 'withholding') continue
    const { record, fields } = body as WithholdingBody
    const target = blanked.get(record) ?? inPage.get(record) ?? held(record)
    if (target === undefined) continue
    const all = [...new Set([...(target.withheld?.fields ?? []), ...fields])]
    blanked.set(record, { ...redact(target, fields), withheld: { by: id, fields: all } })
  }
  return [...blanked.values()]
}
