import { type Called, sendPicture } from '../transport'
import type { KeptPicture, Pictures } from './pictures'

/**
 * Sends pictures one after the other, oldest first. One that the server refuses, that was damaged on the way, or that the
 * server has no time for, holds up no other; without a signal or a session it ends, and goes on with the next contact.
 * That there was no time is trouble all the same, so that the next contact waits longer each time.
 *
 * @param onHeld called for each that the server now holds
 */
export async function sendPictures(
  toSend: readonly KeptPicture[],
  pictures: Pick<Pictures, 'read' | 'refuse' | 'drop'>,
  onHeld: (sha256: string) => void,
): Promise<Called<unknown>> {
  let notNow: string | undefined
  for (const { sha256 } of toSend) {
    const blob = await pictures.read(sha256)
    if (blob === undefined) continue
    const called = await sendPicture(sha256, blob)
    if (!called.ok) return called
    const { value } = called
    if (value.outcome === 'held') onHeld(sha256)
    if (value.outcome === 'withheld') await pictures.drop([sha256])
    if (value.outcome === 'refused') await pictures.refuse(sha256, value.sentence)
    if (value.outcome === 'not now') notNow = value.sentence
  }
  return notNow === undefined
    ? { ok: true, value: undefined }
    : { ok: false, why: 'server trouble', message: notNow }
}
