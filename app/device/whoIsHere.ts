import { v4 as uuid } from 'uuid'
import { type Person, person } from '@/lib/device/answers'

const meKey = 'inchwater person'
const deviceKey = 'inchwater device'

/** The person who last signed in on this device, known without asking the server. */
export function rememberedPerson(storage: Storage): Person | undefined {
  const kept = storage.getItem(meKey)
  if (kept === null) return undefined
  const read = personIn(kept)
  // Written by something else or cut short: the server will say who is here.
  if (read === undefined) storage.removeItem(meKey)
  return read
}

function personIn(kept: string): Person | undefined {
  const read = person.safeParse(jsonIn(kept))
  return read.success ? read.data : undefined
}

function jsonIn(kept: string): unknown {
  try {
    return JSON.parse(kept)
  } catch {
    // Cut short: read as nothing by whoever asked.
    return undefined
  }
}

export const rememberPerson = (storage: Storage, me: Person): void =>
  storage.setItem(meKey, JSON.stringify({ id: me.id, name: me.name, role: me.role }))

/** Forgets a person who has left this browser, but nobody who has come since. */
export function forgetPerson(storage: Storage, personId: string): void {
  if (rememberedPerson(storage)?.id === personId) storage.removeItem(meKey)
}

/**
 * Tells a page that its person has left this browser by another tab, or that somebody else has come: what it shows must
 * not stay in sight.
 * @param shownFor the id of the person whose file the page shows, if it shows one
 */
export function onPersonGone(shownFor: () => string | undefined, onGone: () => void): () => void {
  const look = ({ key, newValue }: StorageEvent): void => {
    if (key !== meKey) return
    const here = newValue === null ? undefined : personIn(newValue)
    if (here === undefined || here.id !== shownFor()) onGone()
  }
  window.addEventListener('storage', look)
  return () => window.removeEventListener('storage', look)
}

/** This browser's own id, made once. It names the device in every record. */
export function deviceId(storage: Storage): string {
  const kept = storage.getItem(deviceKey)
  if (kept !== null) return kept
  const made = uuid()
  storage.setItem(deviceKey, made)
  return made
}
