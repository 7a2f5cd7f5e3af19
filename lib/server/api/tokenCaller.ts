import { addressOf } from '../http/address'
import { refuse } from '../http/answers'
import { store } from '../people/store'
import { type Limiter, makeLimiter } from './pace'
import { type Caller, callerOf } from './tokens'

// Common practice, no published source: an office program asks a few times a minute.
const paces = {
  token: { atOnce: 60, perSecond: 2 },
  unknown: { atOnce: 20, perSecond: 0.2 },
}

type Limiters = Record<keyof typeof paces, Limiter>

// On globalThis, because development reloads modules, and each route is built apart from the others.
const kept = globalThis as typeof globalThis & { inchwaterApiPaces?: Limiters }

/** Starts counting anew; between tests. */
export function resetPaces(): void {
  kept.inchwaterApiPaces = { token: makeLimiter(paces.token), unknown: makeLimiter(paces.unknown) }
}

/**
 * The office program that sent a request, by its token alone (RFC 6750: `Authorization: Bearer …`), or the refusal to
 * answer with. A cookie says nothing here, and a token nowhere else.
 */
export function requireToken(request: Request, now = new Date()): Caller | Response {
  if (kept.inchwaterApiPaces === undefined) resetPaces()
  const limiters = kept.inchwaterApiPaces!
  const [, token] = /^Bearer ([\w-]{20,200})$/.exec(request.headers.get('authorization') ?? '') ?? []
  const caller = token === undefined ? undefined : callerOf(store().database, token, now)
  const waitMs =
    caller === undefined
      ? limiters.unknown.take(addressOf(request), now.getTime())
      : limiters.token.take(caller.tokenId, now.getTime())
  if (waitMs > 0) return tooOften(waitMs)
  if (caller !== undefined) return caller
  const refused =
    token === undefined
      ? refuse(
          401,
          'no-token',
          'Send a token with this: Authorization: Bearer and the token. A manager makes one under Tokens.',
        )
      : refuse(401, 'dead-token', 'This token is not known here, or has ended. Ask a manager for a new one.')
  refused.headers.set('www-authenticate', 'Bearer')
  return refused
}

/** RFC 6585, 4, with the wait as RFC 9110, 10.2.3, says it. */
function tooOften(waitMs: number): Response {
  const seconds = Math.ceil(waitMs / 1000)
  const wait = seconds === 1 ? '1 second' : `${seconds} seconds`
  const refused = refuse(429, 'too-often', `That was asked too often. Wait ${wait}, and ask less often.`)
  refused.headers.set('retry-after', String(seconds))
  return refused
}
