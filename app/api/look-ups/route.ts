import { maySeeLookUps } from '@/lib/records/lookUps'
import { theLog } from '@/lib/server/database'
import { answer, answerResult } from '@/lib/server/http/answers'
import { readBody } from '@/lib/server/http/readBody'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { noteLookUps } from '@/lib/server/lookUps/noteLookUps'
import { readLookUps } from '@/lib/server/lookUps/readLookUps'
import { sentLookUps } from '@/lib/server/lookUps/sentLookUps'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'

/** How often positions were looked up lately: `[{ positionId, times }]`. For those who choose the calls. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request, ...maySeeLookUps)
  if (person instanceof Response) return person
  return answer(readLookUps(store().database, new Date()))
}

/** Counts look-ups: `{ lookUps: [{ mark, positionId, day }] }`. Who sends them is asked and not kept. */
export async function POST(request: Request): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const person = await requireRole(request)
  if (person instanceof Response) return person
  const sent = await readBody(request, sentLookUps)
  if (!sent.ok) return answerResult(sent)
  return answer({ counted: noteLookUps(store().database, theLog(), sent.value.lookUps, new Date()) })
}
