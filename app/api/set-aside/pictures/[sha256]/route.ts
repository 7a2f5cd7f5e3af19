import { pictureHash } from '@/lib/records/kinds/photo'
import { readSetAsidePicture } from '@/lib/server/devices/setAsidePictures'
import { refuse } from '@/lib/server/http/answers'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'
import { drawAnew } from '@/lib/server/photos/drawAnew'
import { pictureResponse } from '@/lib/server/photos/showPicture'

type Routed = { params: Promise<{ sha256: string }> }

/** Shows a picture that is set aside to a manager, who has to decide about it: drawn anew, never as it was sent. */
export async function GET(request: Request, { params }: Routed): Promise<Response> {
  const manager = await requireRole(request, 'manager')
  if (manager instanceof Response) return manager
  const sha256 = pictureHash.safeParse((await params).sha256)
  const bytes = sha256.success ? readSetAsidePicture(store().database, sha256.data) : undefined
  if (bytes === undefined) return refuse(404, 'not-here', 'No such picture is set aside.')
  const drawn = await drawAnew(bytes)
  if (!drawn.ok) return refuse(422, drawn.problem.code, drawn.problem.message)
  return pictureResponse((await params).sha256, drawn.value.bytes, drawn.value.mediaType)
}
