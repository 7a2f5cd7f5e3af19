import { theLog } from '@/lib/server/database'
import { endingAskedFor, handingOver } from '@/lib/server/devices/handingOver'
import { handedOver, setAside } from '@/lib/server/devices/setAside'
import { answer, answerResult } from '@/lib/server/http/answers'
import { readBody } from '@/lib/server/http/readBody'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { store } from '@/lib/server/people/store'

/** By this a device asks whether it has to hand over: for whoever asks, or for whose key it shows. Answers true or false. */
export async function GET(request: Request): Promise<Response> {
  const ending = await endingAskedFor(request)
  return ending instanceof Response ? ending : answer(ending !== undefined)
}

/** By this a device whose session was ended hands over what waits there: { sentAt, records } in, { held } out. */
export async function POST(request: Request): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const ending = await handingOver(request)
  if (ending instanceof Response) return ending
  const sent = await readBody(request, handedOver)
  if (!sent.ok) return answerResult(sent)
  return answer({ held: setAside(store().database, theLog(), ending, sent.value, new Date()) })
}
