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

function send(body: Result<unknown>, status: number): Response {
  return Response.json(body, { status, headers: { 'cache-control': 'no-store' } })
}
