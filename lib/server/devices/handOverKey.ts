import { createHmac, timingSafeEqual } from 'node:crypto'
import { sessionSecret } from '../people/secret'

type Whose = { device: string; personId: string }

/**
 * What a device shows to hand over for a person who is not signed in there any more, once a manager has ended that
 * person's session on it. It is told to the device while the person is signed in, lies in that person's own database
 * there, and opens nothing else. It is derived from the server's secret, so nothing of it is kept here.
 */
export const handOverKey = (dataFolder: string, { device, personId }: Whose): string =>
  createHmac('sha256', sessionSecret(dataFolder)).update(`hand over ${device} ${personId}`).digest('hex')

export function isHandOverKey(dataFolder: string, whose: Whose, key: string): boolean {
  const [shown, right] = [Buffer.from(key, 'hex'), Buffer.from(handOverKey(dataFolder, whose), 'hex')]
  return shown.length === right.length && timingSafeEqual(shown, right)
}
