import type { Result } from '@/lib/core/result'
import { failure } from '@/lib/core/result'

/**
 * The two shapes every route answers with: `{ ok: true, value }`, or `{ ok: false, problem: { code, message } }`
 * whose message is a sentence for the person who must act. Nothing of either is kept by a cache.
 *
 * @example answer({ id: 'p1' }, 201)   refuse(403, 'managers-only', 'Only a manager may do this.')
 */
export function answer<T>(value: T, status = 200): Response {
  return send({ ok: true, value }, status)
}

export function refuse(status: number, code: string, message: string): Response {
  return send(failure(code, message), status)
}

/** The status that a problem is answered with; any other is a mistake of whoever sent it, 400. */
const statuses: Record<string, number> = {
  'no-such-person': 404,
  'no-such-device': 404,
  'no-such-token': 404,
  'name-taken': 409,
  'last-manager': 409,
  'a-program': 409,
  'other-role': 409,
  'dead-link': 410,
  'set-up-is-over': 410,
}

/** Answers with what a change came to. */
export function answerResult(result: Result<unknown>, status = 200): Response {
  if (result.ok) return answer(result.value, status)
  return refuse(statuses[result.problem.code] ?? 400, result.problem.code, result.problem.message)
}

function send(body: Result<unknown>, status: number): Response {
  return Response.json(body, { status, headers: { 'cache-control': 'no-store' } })
}
