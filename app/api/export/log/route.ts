import { recordKinds } from '@/lib/records/registry'
import { download } from '@/lib/server/exchange/download'
import { exportLog } from '@/lib/server/exchange/exportLog'
import { openSnapshot } from '@/lib/server/exchange/snapshot'
import { streamed } from '@/lib/server/exchange/streamed'
import { requireRole } from '@/lib/server/people/session'

/** The whole log as one JSON document: entries with their hashes, and every rating with its standing. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request, 'manager')
  if (person instanceof Response) return person
  const now = new Date()
  const snapshot = openSnapshot(recordKinds)
  const body = streamed(exportLog(snapshot, now), snapshot.close)
  return download(body, `inchwater-log-${now.toISOString().slice(0, 10)}.json`, 'application/json')
}
