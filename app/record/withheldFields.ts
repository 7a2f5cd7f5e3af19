import type { Role } from '@/lib/records/envelope'
import type { Entry } from '@/lib/records/fold/entry'
import { withholding } from '@/lib/records/kinds/withholding'
import { thePicture, withholdableFields } from '@/lib/records/withholdable'

/**
 * The fields of a record that this person may withhold now: personal data that are in it, or a photo's
 * picture, and not gone already. What
 * waits on the device is in nobody's log yet: it is dropped there instead.
 */
export function maybeWithheld(kind: string, entry: Entry<Record<string, unknown>>, role: Role): string[] {
  if (!withholding.mayAdd.includes(role) || entry.waiting) return []
  const gone = entry.withheld?.fields ?? []
  return withholdableFields(kind).filter(
    (field) => (field === thePicture || entry.body[field] !== undefined) && !gone.includes(field),
  )
}
