import type { z } from 'zod'
import type { Result } from '@/lib/core/result'
import { answer, refuse } from '../http/answers'
import { readBody } from '../http/readBody'
import { refuseCrossOrigin } from '../http/sameOrigin'
import { whatDoesNotFit } from '../log/whatDoesNotFit'
import type { Operation } from './operations'
import { requireToken } from './tokenCaller'
import type { Caller } from './tokens'

/** The status that a problem is answered with; any other is a mistake of whoever sent it, 400. */
const statuses: Readonly<Record<string, number>> = {
  'no-such-furnace': 404,
  'no-such-position': 404,
  'no-range': 404,
  'not-on-file': 404,
  'general-purpose': 422,
  refused: 422,
  'log-busy': 503,
  disk: 503,
}

type Sent<One extends Operation> = {
  query: One['query'] extends z.ZodObject ? z.infer<One['query']> : undefined
  body: One['body'] extends z.ZodObject ? z.infer<One['body']> : undefined
}

/**
 * A route of an office program, with the steps that each has: who, by token; what was sent, by the schemas that the
 * document shows; one call; answer.
 *
 * @param statusOf the status of a right answer, where an operation has several
 */
export function apiRoute<One extends Operation>(
  operation: One,
  work: (sent: Sent<One>, caller: Caller) => Promise<Result<z.infer<One['answer']>>>,
  statusOf: (value: z.infer<One['answer']>) => number = () => 200,
) {
  return async (request: Request): Promise<Response> => {
    const refused = operation.method === 'GET' ? undefined : refuseCrossOrigin(request)
    if (refused) return refused
    const caller = requireToken(request)
    if (caller instanceof Response) return caller
    const query = operation.query?.safeParse(Object.fromEntries(new URL(request.url).searchParams))
    if (query?.success === false) return refuse(400, 'not-understood', whatDoesNotFit(query.error))
    const body = operation.body === undefined ? undefined : await readBody(request, operation.body)
    if (body?.ok === false) return refuse(400, body.problem.code, body.problem.message)
    // The schemas were the operation's own, which the compiler can't follow through the optional ones.
    const sent = { query: query?.data, body: body?.value } as Sent<One>
    const done = await work(sent, caller)
    if (done.ok) return answer(done.value, statusOf(done.value))
    return refuse(statuses[done.problem.code] ?? 400, done.problem.code, done.problem.message)
  }
}
