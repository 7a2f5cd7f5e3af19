import { v4 as uuid } from 'uuid'
import { type Person, person } from '@/lib/device/answers'

const meKey = 'inchwater person'
const deviceKey = 'inchwater device'

/** The person who last signed in on this device, known without asking the server. */
export function rememberedPerson(storage: Storage): Person | undefined {
  const kept = storage.getItem(meKey)
  if (kept === null) return undefined
  const read = person.safeParse(jsonIn(kept))
  if (read.success) return read.data
  // Written by something else or cut short: the server will say who is here.
  storage.removeItem(meKey)
  return undefined
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

export const forgetPerson = (storage: Storage): void => storage.removeItem(meKey)

/** Tells a page that the person has left this browser by another tab: what it shows must not stay in sight. */
export function onPersonForgotten(onForgotten: () => void): () => void {
  const look = (event: StorageEvent): void => {
    if (event.key === meKey && event.newValue === null) onForgotten()
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
