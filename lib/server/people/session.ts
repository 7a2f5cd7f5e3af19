import type { Role } from '@/lib/records/envelope'
import { openEndingOfSession } from '../devices/endings'
import { refuse } from '../http/answers'
import { isSecure } from '../http/origin'
import { idleDays } from './idle'
import { authFor, store } from './store'

/** Somebody signed in, as far as the rest of the server needs to know. */
export type Person = { id: string; name: string; role: Role }

/** A person, and the session by which they are signed in. */
export type SignedIn = Person & { sessionId: string }

/** Who sent this request; undefined when nobody is signed in, or the sign-in has ended or lain idle too long. */
export function personOf(request: Request): Promise<SignedIn | undefined> {
  return personOfHeaders(request.headers, request.url)
}

/**
 * The same for a server component, which has headers only.
 *
 * @example const person = await personOfHeaders(await headers())
 */
export async function personOfHeaders(headers: Headers, url?: string): Promise<SignedIn | undefined> {
  const asker = await askerOf({ headers, url })
  if (!asker?.mayAct || asker.hasEnded) return undefined
  return asker.person
}

/** Whose session a request carries. */
type Asker = {
  person: SignedIn
  /** Whether the person is on the team and the session has not lain idle too long. */
  mayAct: boolean
  /** Whether a manager has ended it: it may then hand over what waits on its device, and nothing else. */
  hasEnded: boolean
}

/** Whose session a request carries, whatever it may still do; undefined when it carries none. */
export async function askerOf({ headers, url }: { headers: Headers; url?: string | undefined }) {
  const cookie = headers.get('cookie')
  if (!cookie) return undefined
  // Only the cookie is passed on: nothing else of a request decides who somebody is.
  const found = await authFor(isSecure(headers, url)).api.getSession({ headers: new Headers({ cookie }) })
  if (!found) return undefined
  const { id, name, role, active } = found.user
  const sessionId = found.session.id
  const hasEnded = openEndingOfSession(store().database, sessionId) !== undefined
  const isIdle = Date.now() - found.session.updatedAt.getTime() > idleDays() * 24 * 60 * 60 * 1000
  if (isIdle && !hasEnded) await store().prisma.session.deleteMany({ where: { id: sessionId } })
  const asker: Asker = {
    person: { id, name, role: role as Role, sessionId },
    mayAct: Boolean(active) && !isIdle,
    hasEnded,
  }
  return asker
}

/**
 * For the top of a route: the person, or the refusal to answer with. Without roles, any role will do.
 *
 * @example const person = await requireRole(request, 'manager'); if (person instanceof Response) return person
 */
export async function requireRole(request: Request, ...roles: Role[]): Promise<SignedIn | Response> {
  const person = await personOf(request)
  if (!person) {
    if ((await askerOf(request))?.hasEnded) return deviceEnded()
    return refuse(401, 'not-signed-in', 'You are not signed in, or your sign-in has ended. Sign in again.')
  }
  if (roles.length > 0 && !roles.includes(person.role)) {
    return refuse(403, 'not-your-role', `Only a ${roles.join(' or a ')} may do this.`)
  }
  return person
}

/** Told to a device whose session a manager has ended, until it has handed over what waits there. */
export const deviceEnded = (): Response =>
  refuse(
    401,
    'device-ended',
    'A manager has signed this device out. It hands over what waits here and empties itself; then sign in again.',
  )
