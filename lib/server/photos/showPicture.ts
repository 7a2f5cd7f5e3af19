import { theLog } from '../database'
import { refuse } from '../http/answers'
import { store } from '../people/store'
import { drawSmall } from './drawAnew'
import { readPictureFile } from './pictureFiles'
import { heldPicture } from './pictureTable'

/**
 * A picture as an answer, to somebody who may see it. It is shown as what it was drawn as, and as nothing else: no
 * guessing of its kind, no scripts, no cache, because tomorrow it may be withheld.
 */
export async function showPicture(sha256: string, small: boolean): Promise<Response> {
  if (theLog().pictureNamed(sha256) === 'withheld') {
    return refuse(410, 'withheld', 'A manager has withheld this picture. Its record says who, and why.')
  }
  const { database, dataFolder } = store()
  const held = heldPicture(database, sha256)
  const kept = held && (await readPictureFile(dataFolder, sha256))
  if (held === undefined || kept === undefined) {
    return refuse(
      404,
      'not-here',
      'The server does not have this picture. It comes with the device that took it.',
    )
  }
  const bytes = small ? await drawSmall(kept) : kept
  const mediaType = small ? 'image/jpeg' : held.mediaType
  return pictureResponse(sha256, bytes, mediaType)
}

/** The bytes of a picture that was drawn anew, as an answer. */
export function pictureResponse(sha256: string, bytes: Buffer, mediaType: string): Response {
  return new Response(new Uint8Array(bytes), {
    headers: {
      'content-type': mediaType,
      'content-length': String(bytes.length),
      'content-disposition': `inline; filename="${sha256.slice(0, 12)}.${mediaType.slice(6)}"`,
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'; sandbox",
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'no-store',
    },
  })
}
