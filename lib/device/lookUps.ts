import { v4 as uuidv4 } from 'uuid'
import { mostLookUps } from '@/lib/records/lookUps'
import type { FileDatabase, OwnDatabase } from './database'
import { type Called, type Contact, fetchLookUps, sendLookUps } from './transport'

/** A setpoint that was opened here on a day. `sent` ones stay until the day is over, so that none is counted twice. */
export type KeptLookUp = { key: string; mark: string; positionId: string; day: string; sent: boolean }

/** What the server told of the whole team's look-ups, and when, ISO 8601. */
export type TeamLookUps = { at: string; timesByPosition: ReadonlyMap<string, number> }

/** They change slowly: asking this seldom is enough, in milliseconds. */
const askedEveryMs = 10 * 60_000

/** Counts a look-up: once for each position, person and day on this device. @param day YYYY-MM-DD */
export async function keepLookUp(own: OwnDatabase, positionId: string, day: string): Promise<void> {
  const key = `${day} ${positionId}`
  const { store, done } = own.transaction('lookUps', 'readwrite')
  if ((await store.getKey(key)) === undefined)
    void store.put({ key, mark: uuidv4(), positionId, day, sent: false })
  await done
}

/** Sends what was counted and lets go of past days. What gets no answer goes again, under the same marks. */
export async function sendKeptLookUps(
  own: OwnDatabase,
  today: string,
  contact: Contact,
): Promise<Called<unknown>> {
  const kept = await own.getAll('lookUps')
  const waiting = kept.filter(({ sent }) => !sent)
  for (let from = 0; from < waiting.length; from += mostLookUps) {
    const batch = waiting.slice(from, from + mostLookUps)
    const called = await sendLookUps(
      batch.map(({ mark, positionId, day }) => ({ mark, positionId, day })),
      contact,
    )
    if (!called.ok) return called
    await change(own, (store) => {
      for (const each of batch) void store.put({ ...each, sent: true })
    })
  }
  const past = kept.filter(({ day }) => day < today)
  if (past.length > 0)
    await change(own, (store) => {
      for (const { key } of past) void store.delete(key)
    })
  return { ok: true, value: undefined }
}

/** What the device was told last. It stands in the team file's store, so it goes when the role changes. */
export const readTeamLookUps = async (file: FileDatabase): Promise<TeamLookUps | undefined> =>
  (await file.get('facts', 'lookUps')) as TeamLookUps | undefined

/** Asks for the team's look-ups where what is known has grown old. */
export async function freshTeamLookUps(
  file: FileDatabase,
  known: TeamLookUps | undefined,
  now: Date,
): Promise<Called<TeamLookUps>> {
  if (known !== undefined && Math.abs(now.getTime() - Date.parse(known.at)) < askedEveryMs)
    return { ok: true, value: known }
  const called = await fetchLookUps()
  if (!called.ok) return called
  const timesByPosition = new Map(called.value.map(({ positionId, times }) => [positionId, times]))
  const value = { at: now.toISOString(), timesByPosition }
  await file.put('facts', value, 'lookUps')
  return { ok: true, value }
}

async function change(own: OwnDatabase, work: (store: WritableLookUps) => void): Promise<void> {
  const transaction = own.transaction('lookUps', 'readwrite')
  work(transaction.store)
  await transaction.done
}

type WritableLookUps = {
  put(value: KeptLookUp): Promise<unknown>
  delete(key: string): Promise<unknown>
}
