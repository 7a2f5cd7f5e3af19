import { openWriteRoute } from '@/lib/server/http/writeRoute'
import { acceptanceForm, acceptInvitation } from '@/lib/server/people/invitations'
import { thenSignIn } from '@/lib/server/people/signIn'
import { store } from '@/lib/server/people/store'

/** Joins by an invitation and signs in. Takes { token, password }. */
export const POST = openWriteRoute(acceptanceForm, async (typed, request) =>
  thenSignIn(request, await acceptInvitation(store().database, typed, new Date()), typed.password),
)
