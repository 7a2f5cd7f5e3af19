import { answer } from '@/lib/server/http/answers'
import { openWriteRoute } from '@/lib/server/http/writeRoute'
import { answerSetUp, isSetUpOpen, setUpForm } from '@/lib/server/people/setUp'
import { store } from '@/lib/server/people/store'

export const dynamic = 'force-dynamic'

/** Whether the first manager is still to be set up: { open }. */
export function GET(): Response {
  return answer({ open: isSetUpOpen(store().database) })
}

/** Sets up the first manager and signs them in. Takes { code, name, password }. */
export const POST = openWriteRoute(setUpForm, (typed, request) => answerSetUp(request, typed))
