import { answer } from '@/lib/server/http/answers'
import { readEvents } from '@/lib/server/people/events'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'

const pageLength = 200

/** What was done to people, by whom, when; the newest first. `?before=SEQ` goes further back. For managers. */
export async function GET(request: Request): Promise<Response> {
  const manager = await requireRole(request, 'manager')
  if (manager instanceof Response) return manager
  const before = Number(new URL(request.url).searchParams.get('before')) || undefined
  return answer(readEvents(store().database, pageLength, before))
}
