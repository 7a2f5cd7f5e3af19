import { mostPictureBytes, pictureHash, pictureTypes } from '@/lib/records/kinds/photo'
import { recordKinds } from '@/lib/records/registry'
import { answer, refuse } from '@/lib/server/http/answers'
import { tooLong } from '@/lib/server/http/bodyLimit'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { announcePictures } from '@/lib/server/live/live'
import { readLimitedBytes } from '@/lib/server/log/readLimited'
import { whyNotStored } from '@/lib/server/log/whyNotStored'
import { requireRole } from '@/lib/server/people/session'
import { showPicture } from '@/lib/server/photos/showPicture'
import { takePicture } from '@/lib/server/photos/takePicture'

type Routed = { params: Promise<{ sha256: string }> }

const statuses: Readonly<Record<string, number>> = {
  'other-bytes': 400,
  'record-first': 409,
  withheld: 410,
  'no-picture': 415,
  'try-again': 503,
}

const noHash = () =>
  refuse(400, 'no-hash', 'A picture is named by the SHA-256 of its bytes: 64 hexadecimal digits.')

/** Takes in the bytes of a picture, under the hash by which a photo in the log names it. */
export async function PUT(request: Request, { params }: Routed): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const person = await requireRole(request, ...recordKinds.photo!.mayAdd)
  if (person instanceof Response) return person
  const sha256 = pictureHash.safeParse((await params).sha256)
  if (!sha256.success) return noHash()
  const type = request.headers.get('content-type') ?? ''
  if (!pictureTypes.some((each) => each === type)) {
    return refuse(415, 'no-picture', `Send a picture as ${pictureTypes.join(', ')}.`)
  }
  const sent = await readLimitedBytes(request, mostPictureBytes)
  if (sent === undefined) return refuse(413, 'too-long', tooLong(mostPictureBytes))
  try {
    const taken = await takePicture(sha256.data, sent, new Date())
    if (!taken.ok) {
      const { code, message } = taken.problem
      return refuse(statuses[code] ?? 422, code, message)
    }
    announcePictures()
    return answer(taken.value)
  } catch (cause) {
    const problem = whyNotStored(cause)
    if (problem === undefined) throw cause
    return refuse(503, problem.code, problem.message)
  }
}

/** Shows a picture to people of the team. `?size=small` shows a small copy, for lists. */
export async function GET(request: Request, { params }: Routed): Promise<Response> {
  const person = await requireRole(request, ...recordKinds.photo!.maySee)
  if (person instanceof Response) return person
  const sha256 = pictureHash.safeParse((await params).sha256)
  if (!sha256.success) return noHash()
  return showPicture(sha256.data, new URL(request.url).searchParams.get('size') === 'small')
}
