import { z } from 'zod'
import { recordId } from '@/lib/records/fields'
import { theLog } from '@/lib/server/database'
import { whoHolds } from '@/lib/server/devices/whoHolds'
import { answer, refuse } from '@/lib/server/http/answers'
import { whatDoesNotFit } from '@/lib/server/log/whatDoesNotFit'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'

const asked = z.array(recordId).max(100, 'Ask for 100 records at most.')

/** Who has records on a device of theirs: `?record=ID&record=ID` in, `[{ id, personIds }]` out. For those who ring. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request, 'manager', 'dispatcher')
  if (person instanceof Response) return person
  const parsed = asked.safeParse(new URL(request.url).searchParams.getAll('record'))
  if (!parsed.success) return refuse(400, 'not-record-ids', whatDoesNotFit(parsed.error))
  return answer(whoHolds(store().database, theLog(), parsed.data, person.role))
}
