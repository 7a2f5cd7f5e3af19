import { answer } from '@/lib/server/http/answers'
import { requireRole } from '@/lib/server/people/session'

/** Who is signed in here: { id, name, role }. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  return person instanceof Response ? person : answer({ id: person.id, name: person.name, role: person.role })
}
