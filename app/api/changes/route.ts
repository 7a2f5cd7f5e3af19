import { z } from 'zod'
import { recordKinds } from '@/lib/records/registry'
import { theLog } from '@/lib/server/database'
import { hearFrom } from '@/lib/server/devices/hearFrom'
import { toldToDevice } from '@/lib/server/devices/toldToDevice'
import { answer, refuse } from '@/lib/server/http/answers'
import { whatDoesNotFit } from '@/lib/server/log/whatDoesNotFit'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'
import { pictureNews } from '@/lib/server/photos/pictureTable'

const whole = (what: string) =>
  z
    .string()
    .regex(/^\d{1,15}$/, `${what} must be a whole number.`)
    .transform(Number)

const markOf = (what: string) =>
  z.string().regex(/^[0-9a-f]{64}$/, `${what} must be one that came with an answer.`)

const asked = z.object({
  after: whole('“after”').default(0),
  limit: whole('“limit”')
    .pipe(z.int().min(1, '“limit” must be 1 or more.').max(1000, '“limit” must be 1000 or less.'))
    .default(500),
  pictures: whole('“pictures”').optional(),
  mark: markOf('“mark”').optional(),
  picturesMark: markOf('“picturesMark”').optional(),
})

/**
 * The one way out of the log for devices: `?after=SEQ&limit=N` in, `{ records, next, more }` out. A device that says
 * which it is, is written down as seen, with the number up to which it holds the log. With `&pictures=NUMBER` it is told
 * beside that which pictures the server holds, or holds no longer, since that number: a photo proves nothing without.
 * `mark` stands for the log up to `next`. A device that sends it with `after` is told when the log is another by now,
 * because a back-up was restored: `anew`, and it begins again from the first entry. `picturesMark` is the same for the news
 * of pictures: a back-up may have a photo's record, and not its picture yet. What else a device is told is in
 * lib/server/devices/toldToDevice.ts.
 */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  if (person instanceof Response) return person
  const { searchParams } = new URL(request.url)
  const parsed = asked.safeParse({
    after: searchParams.get('after') ?? undefined,
    limit: searchParams.get('limit') ?? undefined,
    pictures: searchParams.get('pictures') ?? undefined,
    mark: searchParams.get('mark') ?? undefined,
    picturesMark: searchParams.get('picturesMark') ?? undefined,
  })
  if (!parsed.success) return refuse(400, 'bad-numbers', whatDoesNotFit(parsed.error))
  const unheard = hearFrom(request, person, parsed.data.after)
  if (unheard) return unheard
  const { after, limit, pictures, mark, picturesMark } = parsed.data
  const log = theLog()
  if (mark !== undefined && log.hashAt(after) !== mark) {
    return answer({ records: [], next: 0, more: true, anew: true })
  }
  const read = log.readChanges({ after, limit, role: person.role })
  const changes = { ...read, mark: log.hashAt(read.next), ...toldToDevice(request, person.id) }
  if (pictures === undefined || !recordKinds.photo!.maySee.includes(person.role)) return answer(changes)
  const { more, ...news } = pictureNews(store().database, { after: pictures, mark: picturesMark, limit })
  return answer({ ...changes, more: changes.more || more, pictures: news })
}
