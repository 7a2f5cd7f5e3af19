import { recordKinds } from '@/lib/records/registry'
import { importLog } from '@/lib/server/exchange/importLog'
import { withSpooled } from '@/lib/server/exchange/spool'
import { answer, refuse } from '@/lib/server/http/answers'
import { mostLogBytes, tooLong } from '@/lib/server/http/bodyLimit'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { announceNews } from '@/lib/server/live/live'
import { whyNotStored } from '@/lib/server/log/whyNotStored'
import { requireRole } from '@/lib/server/people/session'

/** Takes a whole exported log into an empty server: the file as the body, what was taken in as the answer. */
export async function POST(request: Request): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const person = await requireRole(request, 'manager')
  if (person instanceof Response) return person
  try {
    const imported = await withSpooled(request, mostLogBytes, (file) =>
      importLog(file, { kinds: recordKinds, by: person.id, now: new Date() }),
    )
    if (imported === 'too long') return refuse(413, 'too-long', tooLong(mostLogBytes))
    if (!imported.ok) {
      const status = imported.problem.code === 'log-not-empty' ? 409 : 400
      return refuse(status, imported.problem.code, imported.problem.message)
    }
    announceNews()
    return answer(imported.value)
  } catch (cause) {
    const problem = whyNotStored(cause)
    if (problem === undefined) throw cause
    return refuse(503, problem.code, problem.message)
  }
}
