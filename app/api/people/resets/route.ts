import { writeRoute } from '@/lib/server/http/writeRoute'
import { linkOf } from '@/lib/server/people/linkAddress'
import { makeReset, resetForm } from '@/lib/server/people/resets'
import { store } from '@/lib/server/people/store'

/** Makes a link to set a new password. Takes { personId }; answers { link, expiresAt }, once. */
export const POST = writeRoute({ roles: ['manager'], form: resetForm }, (typed, manager, _id, request) =>
  linkOf(request, 'reset', makeReset(store().database, typed.personId, manager.id, new Date())),
)
