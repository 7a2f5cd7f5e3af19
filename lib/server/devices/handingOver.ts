import { answerResult, refuse } from '../http/answers'
import { askerOf } from '../people/session'
import { store } from '../people/store'
import { contactOf } from './contact'
import { type OpenEnding, openEndingOfSession, openEndingOn } from './endings'

/**
 * For the top of a route by which a device hands over: the ending that it hands over for, or the refusal to answer
 * with. It may be the ended session that asks, which is good for nothing else any more, also of somebody who was taken
 * off the team; or a new session of the same person on the same device.
 */
export async function handingOver(request: Request): Promise<OpenEnding | Response> {
  const contact = contactOf(request)
  if (!contact.ok) return answerResult(contact)
  const asker = await askerOf(request)
  if (asker === undefined)
    return refuse(401, 'not-signed-in', 'You are not signed in, or your sign-in has ended. Sign in again.')
  const { database } = store()
  const device = contact.value?.device
  const ending =
    openEndingOfSession(database, asker.person.sessionId) ??
    (device !== undefined && asker.mayAct
      ? openEndingOn(database, { device, personId: asker.person.id })
      : undefined)
  return ending ?? refuse(409, 'nothing-to-hand-over', 'No manager has ended this device. Reload the page.')
}
