import { z } from 'zod'
import { theLog } from '@/lib/server/database'
import { hearFrom } from '@/lib/server/devices/hearFrom'
import { answer, refuse } from '@/lib/server/http/answers'
import { whatDoesNotFit } from '@/lib/server/log/whatDoesNotFit'
import { requireRole } from '@/lib/server/people/session'

const whole = (what: string) =>
  z
    .string()
    .regex(/^\d{1,15}$/, `${what} must be a whole number.`)
    .transform(Number)

const asked = z.object({
  after: whole('“after”').default(0),
  limit: whole('“limit”')
    .pipe(z.int().min(1, '“limit” must be 1 or more.').max(1000, '“limit” must be 1000 or less.'))
    .default(500),
})

/**
 * The one way out of the log for devices: `?after=SEQ&limit=N` in, `{ records, next, more }` out. A device that says
 * which it is, is written down as seen, with the number up to which it holds the log.
 */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  if (person instanceof Response) return person
  const { searchParams } = new URL(request.url)
  const parsed = asked.safeParse({
    after: searchParams.get('after') ?? undefined,
    limit: searchParams.get('limit') ?? undefined,
  })
  if (!parsed.success) return refuse(400, 'bad-numbers', whatDoesNotFit(parsed.error))
  const unheard = hearFrom(request, person, parsed.data.after)
  if (unheard) return unheard
  const changes = theLog().readChanges({ ...parsed.data, role: person.role })
  return answer(changes)
}
