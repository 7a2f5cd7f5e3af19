import { answerResult } from '../http/answers'
import { deviceEnded, type SignedIn } from '../people/session'
import { store } from '../people/store'
import { contactOf } from './contact'
import { openEndingOn } from './endings'
import { noteContact } from './noteContact'

/**
 * For the top of a route that devices send to or fetch from: writes down that the device was in contact, if the
 * request comes from one.
 *
 * @param examinedSeq the number up to which it says it holds the log
 * @returns the refusal to answer with, if there is one: also when a manager has ended the person's session on that
 *   device, and what waited there then is not handed over yet
 */
export function hearFrom(request: Request, person: SignedIn, examinedSeq?: number): Response | undefined {
  const contact = contactOf(request)
  if (!contact.ok) return answerResult(contact)
  if (contact.value === undefined) return undefined
  const { id: personId, sessionId } = person
  if (openEndingOn(store().database, { device: contact.value.device, personId })) return deviceEnded()
  noteContact(store().database, { ...contact.value, personId, sessionId, examinedSeq }, new Date())
  return undefined
}
