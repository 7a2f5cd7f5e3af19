import { openWriteRoute } from '@/lib/server/http/writeRoute'
import { resetPassword, resetUseForm } from '@/lib/server/people/resets'
import { thenSignIn } from '@/lib/server/people/signIn'
import { store } from '@/lib/server/people/store'

/** Sets a new password by a link, ends all sessions and signs in. Takes { token, password }. */
export const POST = openWriteRoute(resetUseForm, async (typed, request) =>
  thenSignIn(request, await resetPassword(store().database, typed, new Date()), typed.password),
)
