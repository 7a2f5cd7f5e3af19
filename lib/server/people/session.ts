import type { Role } from '@/lib/records/envelope'
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
  const cookie = headers.get('cookie')
  if (!cookie) return undefined
  // Only the cookie is passed on: nothing else of a request decides who somebody is.
  const found = await authFor(isSecure(headers, url)).api.getSession({ headers: new Headers({ cookie }) })
  if (!found?.user.active) return undefined
  if (Date.now() - found.session.updatedAt.getTime() > idleDays() * 24 * 60 * 60 * 1000) {
    await store().prisma.session.deleteMany({ where: { id: found.session.id } })
    return undefined
  }
  const { id, name, role } = found.user
  return { id, name, role: role as Role, sessionId: found.session.id }
}

/**
 * For the top of a route: the person, or the refusal to answer with. Without roles, any role will do.
 *
 * @example const person = await requireRole(request, 'manager'); if (person instanceof Response) return person
 */
export async function requireRole(request: Request, ...roles: Role[]): Promise<SignedIn | Response> {
  const person = await personOf(request)
  if (!person)
    return refuse(401, 'not-signed-in', 'You are not signed in, or your sign-in has ended. Sign in again.')
  if (roles.length > 0 && !roles.includes(person.role)) {
    return refuse(403, 'not-your-role', `Only a ${roles.join(' or a ')} may do this.`)
  }
  return person
}
