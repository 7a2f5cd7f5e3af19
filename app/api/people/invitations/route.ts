import { writeRoute } from '@/lib/server/http/writeRoute'
import { invitationForm, invite } from '@/lib/server/people/invitations'
import { linkOf } from '@/lib/server/people/linkAddress'
import { store } from '@/lib/server/people/store'

/** Invites somebody. Takes { name, role }; answers { link, expiresAt }, once, for the manager to pass on. */
export const POST = writeRoute({ roles: ['manager'], form: invitationForm }, (typed, manager, _id, request) =>
  linkOf(request, 'join', invite(store().database, typed, manager.id, new Date())),
)
