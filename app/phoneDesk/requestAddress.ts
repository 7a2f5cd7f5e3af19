import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { RatingRequestBody } from '@/lib/records/kinds/ratingRequest'

type Request = Entry<RatingRequestBody>

/** The rating request that an address carries along, if it still stands on this device. */
export function requestIn(file: TeamFile, query: { get(name: string): string | null }): Request | undefined {
  const request = file.requests.get(query.get('request') ?? '')
  return request?.withdrawn === undefined ? request : undefined
}

/** An address that carries a request along, so that whatever it lacks can be added and its answer comes next. */
export const carrying = (href: string, request: Request | undefined): string =>
  request === undefined
    ? href
    : `${href}${href.includes('?') ? '&' : '?'}${new URLSearchParams({ request: request.id })}`

/** Where the answer to a request is recorded, for the switch that it is about. */
export function answerHref(request: Request, positionId: string): string {
  const query = new URLSearchParams({ request: request.id, position: positionId })
  if (request.body.furnaceId !== undefined) query.set('furnace', request.body.furnaceId)
  return `/report?${query}`
}
