import { batch } from '@/lib/records/answer'
import { theLog } from '@/lib/server/database'
import { hearFrom } from '@/lib/server/devices/hearFrom'
import { answer, refuse } from '@/lib/server/http/answers'
import { mostBatchBytes, tooLong } from '@/lib/server/http/bodyLimit'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { announceNews } from '@/lib/server/live/live'
import { readLimited } from '@/lib/server/log/readLimited'
import { whatDoesNotFit } from '@/lib/server/log/whatDoesNotFit'
import { whyNotStored } from '@/lib/server/log/whyNotStored'
import { requireRole } from '@/lib/server/people/session'
import { dropWithheldPictures } from '@/lib/server/photos/withheldPictures'

/** The one way into the log: `{ sentAt, records }` in, `{ answers }` out, record by record in the order sent. */
export async function POST(request: Request): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const person = await requireRole(request)
  if (person instanceof Response) return person
  if (!/^application\/json\s*(;|$)/i.test(request.headers.get('content-type') ?? '')) {
    return refuse(415, 'not-json', 'Send records as application/json.')
  }
  const sent = await readJson(request)
  if (sent instanceof Response) return sent
  const parsed = batch.safeParse(sent.json)
  if (!parsed.success) return refuse(400, 'not-a-batch', whatDoesNotFit(parsed.error))
  const unheard = hearFrom(request, person)
  if (unheard) return unheard
  try {
    const answers = await theLog().appendRecords(parsed.data, person)
    await dropWithheldPictures(answers)
    if (answers.some(({ outcome }) => outcome === 'stored')) announceNews()
    return answer({ answers })
  } catch (cause) {
    const problem = whyNotStored(cause)
    if (problem === undefined) throw cause
    return refuse(503, problem.code, problem.message)
  }
}

async function readJson(request: Request): Promise<{ json: unknown } | Response> {
  try {
    const text = await readLimited(request, mostBatchBytes)
    if (text !== undefined) return { json: JSON.parse(text) }
    return refuse(413, 'too-long', `${tooLong(mostBatchBytes)} Send fewer records at a time.`)
  } catch (cause) {
    if (!(cause instanceof SyntaxError) && !(cause instanceof TypeError)) throw cause
    return refuse(400, 'malformed-json', 'What was sent is not JSON in UTF-8.')
  }
}
