import { refuse } from './answers'
import { originOf } from './origin'

/**
 * For the top of every handler that writes: answers 403 when a page of another origin made the browser send this
 * request, and undefined when the handler may go on.
 *
 * Sec-Fetch-Site decides where the browser sends it (W3C Fetch Metadata, "cross-site", "same-site" and
 * "same-origin"); else Origin must be our own (WHATWG Fetch: sent with every method but GET and HEAD). A request
 * with neither comes from no browser, so it carries nobody's cookies but those its sender put in.
 *
 * @example const refused = refuseCrossOrigin(request); if (refused) return refused
 */
export function refuseCrossOrigin(request: Request): Response | undefined {
  const site = request.headers.get('sec-fetch-site')
  const origin = request.headers.get('origin')
  if (site === 'same-origin') return undefined
  const addressedElsewhere = origin !== null && origin !== originOf(request)
  if (site === 'cross-site' || site === 'same-site' || addressedElsewhere) {
    return refuse(
      403,
      'other-origin',
      'This was sent by a page of another address, so nothing was changed. Open Inchwater itself and do it there.',
    )
  }
  return undefined
}
