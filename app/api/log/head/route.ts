import { theLog } from '@/lib/server/database'
import { answer } from '@/lib/server/http/answers'
import { requireRole } from '@/lib/server/people/session'

/** The newest entry of the log, { seq, hash }: its hash stands for it and for every entry before it. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  return person instanceof Response ? person : answer(theLog().head())
}
