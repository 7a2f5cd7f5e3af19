import { listTokens, makeToken, tokenForm } from '@/lib/server/api/tokens'
import { answer } from '@/lib/server/http/answers'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'

/** Every token of office programs, the newest first, without its secret. For managers. */
export async function GET(request: Request): Promise<Response> {
  const manager = await requireRole(request, 'manager')
  return manager instanceof Response ? manager : answer(listTokens(store().database, new Date()))
}

/** Makes a token. Takes { name, role, until }; answers { token, expiresAt }, once. */
export const POST = writeRoute({ roles: ['manager'], form: tokenForm }, (typed, manager) =>
  makeToken(store().database, typed, manager.id, new Date()),
)
