import type { ReportBody } from '@/lib/records/kinds/report'
import { recordKinds } from '@/lib/records/registry'
import type { DraftBody } from './reportForm'

/** A body that its schema accepts, for the preview; one that it refuses is shown at its fields when saved. */
export function wholeReport(body: DraftBody): ReportBody[] {
  const schema = recordKinds.report!.versions[recordKinds.report!.version]!
  const present = Object.fromEntries(
    Object.entries(body).filter(([, value]) => value !== undefined && value !== ''),
  )
  const parsed = schema.safeParse(present)
  return parsed.success ? [parsed.data as ReportBody] : []
}
