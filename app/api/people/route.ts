import { answer } from '@/lib/server/http/answers'
import { listPeople } from '@/lib/server/people/list'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'

/** Everybody, deactivated people too, by name: { id, name, role, active }. For every role, because records name people. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  return person instanceof Response ? person : answer(listPeople(store().database))
}
