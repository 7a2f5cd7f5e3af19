import { endToken, tokenEndForm } from '@/lib/server/api/tokens'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { store } from '@/lib/server/people/store'

/** Ends a token at once. Takes {}. */
export const POST = writeRoute({ roles: ['manager'], form: tokenEndForm }, (_typed, manager, id) =>
  endToken(store().database, id, manager.id, new Date()),
)
