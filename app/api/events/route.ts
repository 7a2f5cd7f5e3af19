import { refuse } from '@/lib/server/http/answers'
import { eventStream } from '@/lib/server/live/eventStream'
import { requireRole } from '@/lib/server/people/session'

/** Tells an open screen at once that the log has something new: `?after=SEQ`, or Last-Event-ID after a break. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  if (person instanceof Response) return person
  const after = request.headers.get('last-event-id') ?? new URL(request.url).searchParams.get('after') ?? '0'
  if (!/^\d{1,15}$/.test(after)) return refuse(400, 'bad-numbers', '“after” must be a whole number.')
  return eventStream(request, person, Number(after))
}
