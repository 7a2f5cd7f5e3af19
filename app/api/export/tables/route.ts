import { recordKinds } from '@/lib/records/registry'
import { download } from '@/lib/server/exchange/download'
import { exportTables } from '@/lib/server/exchange/exportTables'
import { openSnapshot } from '@/lib/server/exchange/snapshot'
import { streamed } from '@/lib/server/exchange/streamed'
import { requireRole } from '@/lib/server/people/session'

/** Everything on file as CSV tables in a zip. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request, 'manager')
  if (person instanceof Response) return person
  const now = new Date()
  const snapshot = openSnapshot(recordKinds)
  const body = streamed(exportTables(snapshot, recordKinds, now), snapshot.close)
  return download(body, `inchwater-tables-${now.toISOString().slice(0, 10)}.zip`, 'application/zip')
}
