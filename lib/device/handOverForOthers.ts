import { openDB } from 'idb'
import { roles } from '@/lib/records/roles'
import { fileName, openFileDatabase, openOwnDatabase } from './database'
import { handOver, keyFact, type Parts } from './handOver'
import { askWhetherEnded, type Called, type HandOverFor } from './transport'

type Asked = Pick<Parts, 'contact' | 'now' | 'limits'> & { me: string }
type KeyHere = HandOverFor & { role: (typeof roles)[number] }

/**
 * Hands over and empties what other people have on this device whose sessions here a manager has ended, while somebody
 * else is signed in. It is the device that hands over, by the key in that person's own database, and not whoever is
 * signed in: nothing of it comes before their eyes or goes under their name. What has no key stays as it is until its
 * person signs in; so does everything in a browser that can't list its databases.
 *
 * @returns the first trouble, once everybody had their turn: what fails for one keeps nobody else's on a lost phone
 */
export async function handOverForOthers({ me, ...asked }: Asked): Promise<Called<unknown>> {
  let trouble: Called<never> | undefined
  for (const key of await keysHere()) {
    if (key.personId === me) continue
    const called = await handOverFor(key, asked).catch(
      (cause): Called<never> => ({ ok: false, why: 'store trouble', message: String(cause) }),
    )
    if (!called.ok) trouble ??= called
  }
  return trouble ?? { ok: true, value: undefined }
}

async function handOverFor(
  { role, personId, key }: KeyHere,
  { contact, now, limits }: Omit<Asked, 'me'>,
): Promise<Called<unknown>> {
  const contactFor: Parts['contact'] = (waiting) => ({ ...contact(waiting), handOverFor: { personId, key } })
  const ended = await askWhetherEnded(contactFor(0))
  if (!ended.ok || !ended.value) return ended
  const file = await openFileDatabase(personId, role)
  const own = await openOwnDatabase(personId)
  try {
    const called = await handOver({ own, file, contact: contactFor, now, limits, key, onHandedOver() {} })
    if (called.ok) return called
    // Another tab may have come to the end of it meanwhile: then there is nothing to hand over any more.
    const still = await askWhetherEnded(contactFor(0))
    return still.ok && !still.value ? still : called
  } finally {
    own.close()
    file.close()
  }
}

/** Whose databases are here with a key in them. */
async function keysHere(): Promise<KeyHere[]> {
  if (!('databases' in indexedDB)) return []
  const keys: KeyHere[] = []
  for (const { name = '' } of await indexedDB.databases()) {
    const [personId = '', role] = name.replace(/^inchwater file /, '').split(' ')
    const known = roles.find((each) => each === role)
    if (known === undefined || name !== fileName(personId, known)) continue
    const key = await keyIn(name)
    if (key !== undefined) keys.push({ personId, role: known, key })
  }
  return keys
}

async function keyIn(name: string): Promise<string | undefined> {
  const database = await openDB(name)
  try {
    const key = database.objectStoreNames.contains('facts') ? await database.get('facts', keyFact) : undefined
    return typeof key === 'string' ? key : undefined
  } finally {
    database.close()
  }
}
