import { listSetAside } from '@/lib/server/devices/setAside'
import { answer } from '@/lib/server/http/answers'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'

/** The records that devices handed over whose session was ended, and that are not in the log. For managers. */
export async function GET(request: Request): Promise<Response> {
  const manager = await requireRole(request, 'manager')
  return manager instanceof Response ? manager : answer(listSetAside(store().database))
}
