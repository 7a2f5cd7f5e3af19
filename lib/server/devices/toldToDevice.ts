import { store } from '../people/store'
import { contactOf } from './contact'
import { hasOpenEndingOfOthers } from './endings'
import { handOverKey } from './handOverKey'

/**
 * What a device is told beside the log: the key by which it hands over for this person, should a manager end their
 * session on it while somebody else is signed in there; and whether that has happened to somebody else. Not to whom:
 * the device finds out by the keys that it has.
 */
export function toldToDevice(
  request: Request,
  personId: string,
): { handOverKey?: string; othersEnded?: true } {
  const contact = contactOf(request)
  if (!contact.ok || contact.value === undefined) return {}
  const { database, dataFolder } = store()
  const whose = { device: contact.value.device, personId }
  return {
    handOverKey: handOverKey(dataFolder, whose),
    ...(hasOpenEndingOfOthers(database, whose) && { othersEnded: true as const }),
  }
}
