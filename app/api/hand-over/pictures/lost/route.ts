import { z } from 'zod'
import { pictureHash } from '@/lib/records/kinds/photo'
import { handingOver } from '@/lib/server/devices/handingOver'
import { noteLostPicture } from '@/lib/server/devices/lostPictures'
import { answer, answerResult } from '@/lib/server/http/answers'
import { readBody } from '@/lib/server/http/readBody'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { store } from '@/lib/server/people/store'

const form = z.object({ sha256: pictureHash })

/** By this a device whose session was ended says that its own bytes of a picture are damaged. Takes { sha256 }. */
export async function POST(request: Request): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const ending = await handingOver(request)
  if (ending instanceof Response) return ending
  const sent = await readBody(request, form)
  if (!sent.ok) return answerResult(sent)
  noteLostPicture(store().database, ending, sent.value.sha256, new Date())
  return answer(true)
}
