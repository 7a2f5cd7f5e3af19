import { openWriteRoute } from '@/lib/server/http/writeRoute'
import { signIn, signInForm } from '@/lib/server/people/signIn'

/** Signs this browser in. Takes { name, password }. */
export const POST = openWriteRoute(signInForm, (typed, request) => signIn(request, typed))
