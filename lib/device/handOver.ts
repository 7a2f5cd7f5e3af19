import type { FileDatabase, OwnDatabase } from './database'
import type { OutboxItem } from './outbox'
import { nextBatch } from './outbox'
import { hashOf } from './picture/hashOf'
import {
  type Called,
  type Contact,
  handOverBatch,
  handOverPicture,
  sayEmptied,
  sayPictureLost,
} from './transport'

/** The name of the fact that holds the key by which a device hands over for a person who is not signed in. */
export const keyFact = 'handOverKey'

export type Parts = {
  own: OwnDatabase
  file: FileDatabase
  contact(waiting: number): Contact
  now(): Date
  /**
   * Called when nothing waits any more and before anything is emptied: from then on nothing may be added. Called again
   * where another page of that person has added something all the same.
   */
  onHandedOver(): void
  limits: { records: number; bytes: number }
  /** The key by which it hands over for somebody who is not signed in: it stays until the server knows that all is done. */
  key?: string
}

/**
 * What a device does once a manager has ended its person's session: it hands over what waits, refused records and
 * pictures too, and lets go of each only when the server holds it; then it empties itself of the team file, the drafts
 * and everything else of that person; then it says so. Broken off anywhere, it is simply begun again.
 *
 * The stores are emptied and not deleted: a deletion waits for every other tab, and this must not.
 */
export async function handOver(parts: Parts): Promise<Called<unknown>> {
  const { own, file, contact, onHandedOver, key } = parts
  do {
    for (const handOverAll of [handOverRecords, handOverPictures]) {
      const called = await handOverAll(parts)
      if (!called.ok) return called
    }
    onHandedOver()
  } while (!(await emptiedUnlessMoreWaits(own)))
  const emptying = file.transaction([...file.objectStoreNames], 'readwrite')
  for (const name of file.objectStoreNames) void emptying.objectStore(name).clear()
  if (key !== undefined) void emptying.objectStore('facts').put(key, keyFact)
  await emptying.done
  const said = await sayEmptied(contact(0))
  if (said.ok && key !== undefined) await file.delete('facts', keyFact)
  return said
}

/**
 * Looked at and emptied in one transaction: another page of that person may have added something since the last look,
 * which is then handed over too.
 */
async function emptiedUnlessMoreWaits(own: OwnDatabase): Promise<boolean> {
  const emptying = own.transaction([...own.objectStoreNames], 'readwrite')
  const records = await emptying.objectStore('outbox').count()
  const pictures = await emptying.objectStore('pictures').count()
  const nothingWaits = records + pictures === 0
  if (nothingWaits) for (const name of own.objectStoreNames) void emptying.objectStore(name).clear()
  await emptying.done
  return nothingWaits
}

async function handOverRecords({ own, contact, now, limits }: Parts): Promise<Called<unknown>> {
  for (;;) {
    const items = (await own.getAll('outbox')).map(({ refusal, ...item }): OutboxItem => item)
    const batch = nextBatch(items, limits)
    if (batch.length === 0) return { ok: true, value: undefined }
    const records = batch.map(({ record }) => record)
    const called = await handOverBatch(records, now().toISOString(), contact(items.length))
    if (!called.ok) return called
    const letGo = own.transaction('outbox', 'readwrite')
    for (const id of called.value.held) void letGo.store.delete(id)
    await letGo.done
    if (called.value.held.length === 0)
      return { ok: false, why: 'server trouble', message: 'The server held none of what was handed over.' }
  }
}

/**
 * The pictures that the server does not hold yet, one after the other. Bytes that a disk has damaged fit no photo any
 * more and never will: such a picture is let go of once the server has written down that it is lost, which the managers
 * read with the ending and with its photo. Keeping it would keep everything else of that person's on a lost phone.
 */
async function handOverPictures({ own, file, contact }: Parts): Promise<Called<unknown>> {
  const held = new Set(await file.getAllKeys('picturesHeld'))
  for (const sha256 of await own.getAllKeys('pictures')) {
    if (!held.has(sha256)) {
      const bytes = await own.get('pictureBytes', sha256)
      const fits = bytes !== undefined && (await hashOf(bytes)) === sha256
      const called = await (fits
        ? handOverPicture(sha256, bytes, contact(0))
        : sayPictureLost(sha256, contact(0)))
      if (!called.ok) return called
    }
    const letGo = own.transaction(['pictures', 'pictureBytes'], 'readwrite')
    void letGo.objectStore('pictures').delete(sha256)
    void letGo.objectStore('pictureBytes').delete(sha256)
    await letGo.done
  }
  return { ok: true, value: undefined }
}
