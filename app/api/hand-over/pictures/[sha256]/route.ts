import { mostPictureBytes, pictureHash } from '@/lib/records/kinds/photo'
import { handingOver } from '@/lib/server/devices/handingOver'
import { setAsidePicture } from '@/lib/server/devices/setAsidePictures'
import { answer, refuse } from '@/lib/server/http/answers'
import { tooLong } from '@/lib/server/http/bodyLimit'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { readLimitedBytes } from '@/lib/server/log/readLimited'
import { store } from '@/lib/server/people/store'

type Routed = { params: Promise<{ sha256: string }> }

/** Those after which the device keeps the picture, to hand it over again. */
const statuses: Readonly<Record<string, number>> = { 'other-bytes': 400, 'try-again': 503 }

/** By this a device whose session was ended hands over the bytes of a picture that waits there. */
export async function PUT(request: Request, { params }: Routed): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const ending = await handingOver(request)
  if (ending instanceof Response) return ending
  const sha256 = pictureHash.safeParse((await params).sha256)
  if (!sha256.success)
    return refuse(400, 'no-hash', 'A picture is named by the SHA-256 of its bytes: 64 hexadecimal digits.')
  const sent = await readLimitedBytes(request, mostPictureBytes)
  if (sent === undefined) return refuse(413, 'too-long', tooLong(mostPictureBytes))
  const kept = await setAsidePicture(store().database, ending, sha256.data, sent, new Date())
  if (kept.ok) return answer(true)
  return refuse(statuses[kept.problem.code] ?? 422, kept.problem.code, kept.problem.message)
}
