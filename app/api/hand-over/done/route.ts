import { theLog } from '@/lib/server/database'
import { closeEnding } from '@/lib/server/devices/endings'
import { handingOver } from '@/lib/server/devices/handingOver'
import { dropUnnamedPictures } from '@/lib/server/devices/setAsidePictures'
import { answer } from '@/lib/server/http/answers'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { store } from '@/lib/server/people/store'

/** By this a device says that it has handed over everything and emptied itself. Takes {}. */
export async function POST(request: Request): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const ending = await handingOver(request)
  if (ending instanceof Response) return ending
  const { database } = store()
  dropUnnamedPictures(database, theLog(), ending.id)
  closeEnding(database, ending, new Date())
  return answer(true)
}
