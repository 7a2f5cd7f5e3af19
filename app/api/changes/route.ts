import { z } from 'zod'
import { theLog } from '@/lib/server/database'
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

/** The one way out of the log for devices: `?after=SEQ&limit=N` in, `{ records, next, more }` out. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  if (person instanceof Response) return person
  const { searchParams } = new URL(request.url)
  const parsed = asked.safeParse({
    after: searchParams.get('after') ?? undefined,
    limit: searchParams.get('limit') ?? undefined,
  })
  if (!parsed.success) return refuse(400, 'bad-numbers', whatDoesNotFit(parsed.error))
  const changes = theLog().readChanges({ ...parsed.data, role: person.role })
  return answer(changes)
}
