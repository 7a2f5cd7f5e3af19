import type { Answer } from '@/lib/records/answer'
import type { RecordEnvelope } from '@/lib/records/envelope'
import type { LookUpMark, LookUpTotal } from '@/lib/records/lookUps'
import {
  batchAnswers,
  type ChangesPage,
  changesPage,
  counted,
  held,
  holding,
  lookUpTotals,
  type Person,
  people,
  person,
  problem,
} from './answers'
import { flag, object, oneOf, type Shape, type Shaped } from './shape'

export type { Person } from './answers'

/** What became of a call to the server: its answer, or which of the ways it went wrong. */
export type Called<T> = { ok: true; value: T } | { ok: false; why: Trouble; message: string }

/**
 * `device ended`: a manager has ended this person's session on this device, which now hands over and empties itself.
 * `newer page`: a newer program has taken the store over in another tab, and this page has to be loaded anew.
 */
export type Trouble =
  | 'no signal'
  | 'signed out'
  | 'device ended'
  | 'server trouble'
  | 'store trouble'
  | 'newer page'

/** What the device says of itself to the server, so that managers can see what has not left it yet. */
export type Contact = {
  device: string
  waiting: number
  build: string
  /** For whom it hands over, where that is not who is signed in, and what proves it. */
  handOverFor?: HandOverFor
}

export type HandOverFor = { personId: string; key: string }

/** Asks the server, and reads its answer through a schema. */
export async function call<T>(path: string, shape: Shape<T>, init?: RequestInit): Promise<Called<T>> {
  let response: Response
  try {
    response = await fetch(path, { ...init, headers: { accept: 'application/json', ...init?.headers } })
  } catch (cause) {
    return { ok: false, why: 'no signal', message: String(cause) }
  }
  if (response.status === 401) {
    const said = await problemIn(response)
    return said?.code === 'device-ended'
      ? { ok: false, why: 'device ended', message: said.message }
      : { ok: false, why: 'signed out', message: 'Sign in again to send and fetch.' }
  }
  if (!response.ok) {
    return { ok: false, why: 'server trouble', message: `The server answered ${response.status} to ${path}.` }
  }
  const parsed = object({ ok: oneOf(true), value: shape }).safeParse(await jsonOf(response))
  return parsed.success
    ? { ok: true, value: parsed.data.value as T }
    : { ok: false, why: 'server trouble', message: `The server’s answer to ${path} could not be read.` }
}

/** The answer's JSON; undefined where it is none, cut short perhaps. */
const jsonOf = (response: Response): Promise<unknown> => response.json().catch(() => undefined)

async function problemIn(response: Response): Promise<Shaped<typeof problem>['problem'] | undefined> {
  const said = problem.safeParse(await jsonOf(response))
  return said.success ? said.data.problem : undefined
}

const headersOf = ({ device, waiting, build, handOverFor }: Contact): Record<string, string> => ({
  'inchwater-device': device,
  'inchwater-waiting': String(waiting),
  'inchwater-build': build,
  ...(handOverFor && {
    'inchwater-person': handOverFor.personId,
    'inchwater-hand-over-key': handOverFor.key,
  }),
})

/** What is handed over for somebody else goes without the session of whoever is signed in. */
const credentialsOf = ({ handOverFor }: Contact): RequestCredentials =>
  handOverFor === undefined ? 'same-origin' : 'omit'

export const sendBatch = async (
  records: RecordEnvelope[],
  sentAt: string,
  contact: Contact,
): Promise<Called<Answer[]>> => {
  const called = await call('/api/records', batchAnswers, postJson(contact, { sentAt, records }))
  return called.ok ? { ok: true, value: called.value.answers } : called
}

/** How far a device holds the log, or the news of pictures, and what stood for it so far. */
export type HeldTo = { after: number; mark: string | undefined }

export function fetchChanges(
  log: HeldTo,
  pictures: HeldTo,
  limit: number,
  contact: Contact,
): Promise<Called<ChangesPage>> {
  const asked = new URLSearchParams({
    after: String(log.after),
    limit: String(limit),
    pictures: String(pictures.after),
  })
  if (log.mark !== undefined) asked.set('mark', log.mark)
  if (pictures.mark !== undefined) asked.set('picturesMark', pictures.mark)
  return call(`/api/changes?${asked}`, changesPage, { headers: headersOf(contact) })
}

/** What became of a picture that was sent: the server holds it, or why it will not, or not yet. */
export type PictureSent =
  | { outcome: 'held' | 'withheld' | 'record first' | 'damaged' }
  | { outcome: 'refused' | 'not now'; sentence: string }

/** Sends the bytes of a picture. Sending them again changes nothing. */
export async function sendPicture(sha256: string, picture: Blob): Promise<Called<PictureSent>> {
  const path = `/api/photos/${sha256}`
  let response: Response
  try {
    response = await fetch(path, {
      method: 'PUT',
      headers: { accept: 'application/json', 'content-type': picture.type },
      body: picture,
    })
  } catch (cause) {
    return { ok: false, why: 'no signal', message: String(cause) }
  }
  if (response.ok) return { ok: true, value: { outcome: 'held' } }
  if (response.status === 401)
    return { ok: false, why: 'signed out', message: 'Sign in again to send and fetch.' }
  if (response.status === 410) return { ok: true, value: { outcome: 'withheld' } }
  if (response.status === 409) return { ok: true, value: { outcome: 'record first' } }
  const { code, message = `The server answered ${response.status}.` } = (await problemIn(response)) ?? {}
  if (code === 'other-bytes') return { ok: true, value: { outcome: 'damaged' } }
  if (code === 'try-again') return { ok: true, value: { outcome: 'not now', sentence: message } }
  if ([413, 415, 422].includes(response.status))
    return { ok: true, value: { outcome: 'refused', sentence: message } }
  return { ok: false, why: 'server trouble', message: `The server answered ${response.status} to ${path}.` }
}

export const fetchMe = (): Promise<Called<Person>> => call('/api/auth/me', person)

export const fetchPeople = (): Promise<Called<Shaped<typeof people>>> => call('/api/people', people)

/** Sends look-ups to be counted. Sending them again counts nothing twice. */
export const sendLookUps = (lookUps: readonly LookUpMark[], contact: Contact): Promise<Called<unknown>> =>
  call('/api/look-ups', counted, postJson(contact, { lookUps }))

/** How often the team looked positions up lately: for those who choose the calls. */
export const fetchLookUps = (): Promise<Called<LookUpTotal[]>> => call('/api/look-ups', lookUpTotals)

/** Who has records on a device of theirs, as the server last heard: for those who ring. */
export const fetchHolding = (recordIds: readonly string[]): Promise<Called<Shaped<typeof holding>>> =>
  call(`/api/devices/holding?${new URLSearchParams(recordIds.map((id) => ['record', id]))}`, holding)

const postJson = (contact: Contact, body: unknown): RequestInit => ({
  method: 'POST',
  credentials: credentialsOf(contact),
  headers: { 'content-type': 'application/json', ...headersOf(contact) },
  body: JSON.stringify(body),
})

/** Asks whether a manager has ended the session for which this device can hand over. */
export const askWhetherEnded = (contact: Contact): Promise<Called<boolean>> =>
  call('/api/hand-over', flag, { credentials: credentialsOf(contact), headers: headersOf(contact) })

/** Hands records over after the session was ended; `held` are those that the server has now, for a manager to see. */
export const handOverBatch = (
  records: RecordEnvelope[],
  sentAt: string,
  contact: Contact,
): Promise<Called<{ held: string[] }>> => call('/api/hand-over', held, postJson(contact, { sentAt, records }))

/**
 * Hands over the bytes of a picture. Done with, also when the server takes them for none (413, 422); otherwise try again:
 * a 400 is of bytes that were damaged on the way, or of something on the way.
 */
export async function handOverPicture(
  sha256: string,
  bytes: ArrayBuffer,
  contact: Contact,
): Promise<Called<unknown>> {
  const path = `/api/hand-over/pictures/${sha256}`
  try {
    const headers = {
      accept: 'application/json',
      'content-type': 'application/octet-stream',
      ...headersOf(contact),
    }
    const credentials = credentialsOf(contact)
    const { ok, status } = await fetch(path, { method: 'PUT', credentials, headers, body: bytes })
    if (ok || [413, 422].includes(status)) return { ok: true, value: undefined }
    return { ok: false, why: 'server trouble', message: `The server answered ${status} to ${path}.` }
  } catch (cause) {
    return { ok: false, why: 'no signal', message: String(cause) }
  }
}

/** Says that a picture can't be handed over, because this device's own bytes of it are damaged. */
export const sayPictureLost = (sha256: string, contact: Contact): Promise<Called<boolean>> =>
  call('/api/hand-over/pictures/lost', flag, postJson(contact, { sha256 }))

/** Says that nothing of that person's is on this device any more. */
export const sayEmptied = (contact: Contact): Promise<Called<boolean>> =>
  call('/api/hand-over/done', flag, postJson(contact, {}))
