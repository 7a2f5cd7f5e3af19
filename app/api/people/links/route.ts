import { openWriteRoute } from '@/lib/server/http/writeRoute'
import { lookAtLink, lookForm } from '@/lib/server/people/lookAtLink'
import { store } from '@/lib/server/people/store'

/**
 * Tells whom a link is for, before it is used. Takes { token }; answers { purpose, name, expiresAt }. It changes
 * nothing, and is a POST only to keep the token out of addresses, which are logged.
 */
export const POST = openWriteRoute(lookForm, ({ token }) => lookAtLink(store().database, token, new Date()))
