import { answerResult, refuse } from '../http/answers'
import { askerOf } from '../people/session'
import { store } from '../people/store'
import { contactOf } from './contact'
import { type OpenEnding, openEndingOfSession, openEndingOn } from './endings'
import { isHandOverKey } from './handOverKey'

/**
 * For the top of a route by which a device hands over: the ending that it hands over for, or the refusal to answer
 * with.
 */
export async function handingOver(request: Request): Promise<OpenEnding | Response> {
  const ending = await endingAskedFor(request)
  return ending ?? refuse(409, 'nothing-to-hand-over', 'No manager has ended this device. Reload the page.')
}

/**
 * The ending that a device asks for; undefined where there is none. It may be the ended session that asks, which is good
 * for nothing else any more, also of somebody who was taken off the team; a new session of the same person on the same
 * device; or the device itself by the key of that person's database, whoever is signed in there now. A key that is not
 * the right one is answered as if nothing had been ended.
 */
export async function endingAskedFor(request: Request): Promise<OpenEnding | undefined | Response> {
  const contact = contactOf(request)
  if (!contact.ok) return answerResult(contact)
  const { database, dataFolder } = store()
  const device = contact.value?.device
  const [personId, key] = ['inchwater-person', 'inchwater-hand-over-key'].map((name) =>
    request.headers.get(name),
  )
  if (device !== undefined && personId != null && key != null) {
    const whose = { device, personId }
    return isHandOverKey(dataFolder, whose, key) ? openEndingOn(database, whose) : undefined
  }
  const asker = await askerOf(request)
  if (asker === undefined)
    return refuse(401, 'not-signed-in', 'You are not signed in, or your sign-in has ended. Sign in again.')
  return (
    openEndingOfSession(database, asker.person.sessionId) ??
    (device !== undefined && asker.mayAct
      ? openEndingOn(database, { device, personId: asker.person.id })
      : undefined)
  )
}
