import type { z } from 'zod'
import type { Result } from '@/lib/core/result'
import type { Role } from '@/lib/records/envelope'
import { sessionsChanged } from '../live/live'
import { type Person, requireRole } from '../people/session'
import { answerResult } from './answers'
import { readBody } from './readBody'
import { refuseCrossOrigin } from './sameOrigin'

type Routed = { params: Promise<Record<string, string>> }
type Done = Result<unknown> | Response

/**
 * A route that writes, with the steps that every write has: same origin, who, what was typed, one call, answer. It is
 * about people, so open screens look after their sessions at once.
 *
 * @param roles who may do it; none given means anybody signed in
 */
export function writeRoute<Schema extends z.ZodType>(
  { roles = [], form }: { roles?: Role[]; form: Schema },
  work: (typed: z.infer<Schema>, person: Person, id: string, request: Request) => Promise<Done> | Done,
) {
  return async (request: Request, { params }: Partial<Routed> = {}): Promise<Response> => {
    const refused = refuseCrossOrigin(request)
    if (refused) return refused
    const person = await requireRole(request, ...roles)
    if (person instanceof Response) return person
    const typed = await readBody(request, form)
    if (!typed.ok) return answerResult(typed)
    const done = await work(typed.value, person, (await params)?.id ?? '', request)
    await sessionsChanged()
    return done instanceof Response ? done : answerResult(done)
  }
}

/** The same for somebody who can't be signed in yet. */
export function openWriteRoute<Schema extends z.ZodType>(
  form: Schema,
  work: (typed: z.infer<Schema>, request: Request) => Promise<Done> | Done,
) {
  return async (request: Request): Promise<Response> => {
    const refused = refuseCrossOrigin(request)
    if (refused) return refused
    const typed = await readBody(request, form)
    if (!typed.ok) return answerResult(typed)
    const done = await work(typed.value, request)
    await sessionsChanged()
    return done instanceof Response ? done : answerResult(done)
  }
}
