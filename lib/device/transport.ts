import '@/lib/records/withoutEval'
import { z } from 'zod'
import { type Answer, batchAnswer } from '@/lib/records/answer'
import { type RecordEnvelope, recordEnvelope, roles } from '@/lib/records/envelope'
import type { HeldRecord } from '@/lib/records/fold/entry'

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
export type Contact = { device: string; waiting: number; build: string }

export type Person = { id: string; name: string; role: (typeof roles)[number] }

const person = z.object({ id: z.string(), name: z.string(), role: z.enum(roles) })
const people = z.array(person.extend({ active: z.boolean(), program: z.boolean().optional() }))
const heldRecord = recordEnvelope.extend({
  seq: z.int(),
  receivedAt: z.string(),
  clockShiftMs: z.number(),
  withheld: z.object({ by: z.string(), fields: z.array(z.string()) }).optional(),
})
/** Pictures that the server holds, or holds no longer, since the device last asked. */
const pictureNews = z.object({
  news: z.array(z.object({ sha256: z.string(), held: z.boolean() })),
  next: z.int(),
  /** What was known before is to be forgotten. */
  anew: z.literal(true).optional(),
})
export type PictureNews = z.infer<typeof pictureNews>
const changesPage = z.object({
  records: z.array(heldRecord),
  next: z.int(),
  more: z.boolean(),
  pictures: pictureNews.optional(),
  mark: z.string().optional(),
  anew: z.literal(true).optional(),
})

const problem = z.object({ problem: z.object({ code: z.string(), message: z.string() }) })

/** Asks the server, and reads its answer through a schema. */
export async function call<T>(path: string, shape: z.ZodType<T>, init?: RequestInit): Promise<Called<T>> {
  let response: Response
  try {
    response = await fetch(path, { ...init, headers: { accept: 'application/json', ...init?.headers } })
  } catch (cause) {
    return { ok: false, why: 'no signal', message: String(cause) }
  }
  if (response.status === 401) {
    const said = problem.safeParse(await response.json().catch(() => undefined))
    return said.data?.problem.code === 'device-ended'
      ? { ok: false, why: 'device ended', message: said.data.problem.message }
      : { ok: false, why: 'signed out', message: 'Sign in again to send and fetch.' }
  }
  if (!response.ok) {
    return { ok: false, why: 'server trouble', message: `The server answered ${response.status} to ${path}.` }
  }
  const parsed = z
    .object({ ok: z.literal(true), value: shape })
    .safeParse(await response.json().catch(() => undefined))
  return parsed.success
    ? { ok: true, value: parsed.data.value as T }
    : { ok: false, why: 'server trouble', message: `The server’s answer to ${path} could not be read.` }
}

const headersOf = ({ device, waiting, build }: Contact): Record<string, string> => ({
  'inchwater-device': device,
  'inchwater-waiting': String(waiting),
  'inchwater-build': build,
})

export const sendBatch = async (
  records: RecordEnvelope[],
  sentAt: string,
  contact: Contact,
): Promise<Called<Answer[]>> => {
  const called = await call('/api/records', batchAnswer, postJson(contact, { sentAt, records }))
  return called.ok ? { ok: true, value: called.value.answers } : called
}

export type ChangesPage = {
  records: HeldRecord[]
  next: number
  more: boolean
  pictures?: PictureNews
  /** Stands for the log up to `next`; to be sent with it. */
  mark?: string
  /** The log is another than the mark stood for: a back-up was restored. */
  anew?: true
}

export const fetchChanges = (
  after: number,
  mark: string | undefined,
  limit: number,
  picturesAfter: number,
  contact: Contact,
): Promise<Called<ChangesPage>> =>
  call(
    `/api/changes?after=${after}${mark === undefined ? '' : `&mark=${mark}`}&limit=${limit}&pictures=${picturesAfter}`,
    changesPage,
    { headers: headersOf(contact) },
  )

/** What became of a picture that was sent: the server holds it, or why it will not, or not yet. */
export type PictureSent =
  | { outcome: 'held' | 'withheld' | 'record first' | 'damaged' }
  | { outcome: 'refused'; sentence: string }

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
  const said = problem.safeParse(await response.json().catch(() => undefined))
  const { code, message = `The server answered ${response.status}.` } = said.data?.problem ?? {}
  if (code === 'other-bytes') return { ok: true, value: { outcome: 'damaged' } }
  if ([413, 415, 422].includes(response.status))
    return { ok: true, value: { outcome: 'refused', sentence: message } }
  return { ok: false, why: 'server trouble', message: `The server answered ${response.status} to ${path}.` }
}

export const fetchMe = (): Promise<Called<Person>> => call('/api/auth/me', person)

export const fetchPeople = (): Promise<Called<z.infer<typeof people>>> => call('/api/people', people)

const holding = z.array(z.object({ id: z.string(), personIds: z.array(z.string()) }))

/** Who has records on a device of theirs, as the server last heard: for those who ring. */
export const fetchHolding = (recordIds: readonly string[]): Promise<Called<z.infer<typeof holding>>> =>
  call(`/api/devices/holding?${new URLSearchParams(recordIds.map((id) => ['record', id]))}`, holding)

const postJson = (contact: Contact, body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json', ...headersOf(contact) },
  body: JSON.stringify(body),
})

/** Hands records over after the session was ended; `held` are those that the server has now, for a manager to see. */
export const handOverBatch = (
  records: RecordEnvelope[],
  sentAt: string,
  contact: Contact,
): Promise<Called<{ held: string[] }>> =>
  call('/api/hand-over', z.object({ held: z.array(z.string()) }), postJson(contact, { sentAt, records }))

/** Hands over the bytes of a picture. Done with, also when the server takes them for none; otherwise try again. */
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
    const { ok, status } = await fetch(path, { method: 'PUT', headers, body: bytes })
    if (ok || [400, 413, 422].includes(status)) return { ok: true, value: undefined }
    return { ok: false, why: 'server trouble', message: `The server answered ${status} to ${path}.` }
  } catch (cause) {
    return { ok: false, why: 'no signal', message: String(cause) }
  }
}

/** Says that nothing of that person's is on this device any more. */
export const sayEmptied = (contact: Contact): Promise<Called<boolean>> =>
  call('/api/hand-over/done', z.boolean(), postJson(contact, {}))
