import { openDB } from 'idb'
import { roles } from '@/lib/records/roles'
import { fileName, openFileDatabase, openOwnDatabase } from './database'
import { handOver, keyFact, type Parts } from './handOver'
import { askWhetherEnded, type Called, type HandOverFor } from './transport'

type Asked = Pick<Parts, 'contact' | 'now' | 'limits'> & { me: string }

/**
 * Hands over and empties what other people have on this device whose sessions here a manager has ended, while somebody
 * else is signed in. It is the device that hands over, by the key in that person's own database, and not whoever is
 * signed in: nothing of it comes before their eyes or goes under their name. What has no key stays as it is until its
 * person signs in; so does everything in a browser that can't list its databases.
 */
export async function handOverForOthers({ me, contact, now, limits }: Asked): Promise<Called<unknown>> {
  for (const { role, ...handOverFor } of await keysHere()) {
    if (handOverFor.personId === me) continue
    const contactFor: Parts['contact'] = (waiting) => ({ ...contact(waiting), handOverFor })
    const ended = await askWhetherEnded(contactFor(0))
    if (!ended.ok) return ended
    if (!ended.value) continue
    const file = await openFileDatabase(handOverFor.personId, role)
    const own = await openOwnDatabase(handOverFor.personId)
    try {
      const { key } = handOverFor
      const called = await handOver({ own, file, contact: contactFor, now, limits, key, onHandedOver() {} })
      if (!called.ok) return called
    } finally {
      own.close()
      file.close()
    }
  }
  return { ok: true, value: undefined }
}

/** Whose databases are here with a key in them. */
async function keysHere(): Promise<(HandOverFor & { role: (typeof roles)[number] })[]> {
  if (!('databases' in indexedDB)) return []
  const keys = []
  for (const { name = '' } of await indexedDB.databases()) {
    const [personId = '', role] = name.replace(/^inchwater file /, '').split(' ')
    const known = roles.find((each) => each === role)
    if (known === undefined || name !== fileName(personId, known)) continue
    const database = await openDB(name)
    const key = database.objectStoreNames.contains('facts') ? await database.get('facts', keyFact) : undefined
    database.close()
    if (typeof key === 'string') keys.push({ personId, role: known, key })
  }
  return keys
}
