import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { demoPeople, type PersonKey } from './people'
import { seededId } from './seededId'

/** The demo's own today: everything in it was said in the four years before the end of this day. */
export const demoDay = '2026-11-20'
export const firstDay = '2022-09-12'

export type Said = {
  kind: string
  by: PersonKey
  /** The day, year-month-day. */
  on: string
  /** The id of a record that was said in the same breath. */
  with?: string
  /** Minutes since the same person's last word, from and to; 2 to 12 if left out. */
  pause?: readonly [from: number, to: number]
  body: object
}

/** Takes down what the demo's people say. */
export type Book = {
  /**
   * Adds a record and answers its id. It comes after every record that it names, and after what the same person said
   * before on the same day: a few minutes, or within a second of the record that it goes with.
   */
  say(said: Said): string
  /** Everything said so far, oldest first. */
  records(): RecordEnvelope[]
}

const minuteMs = 60_000
/** The working day in the invented valley begins at 14:00 by the universal clock; the first word within five hours. */
const dayBegins = 14 * 60
const firstWordMinutes = 5 * 60

/**
 * An empty book. Moments and ids come from `random` alone, so the same words in the same order give the same records.
 *
 * @param random numbers in [0, 1)
 */
export function openBook(random: () => number): Book {
  const said: (RecordEnvelope & { atMs: number })[] = []
  const momentOf = new Map<string, number>()
  const lastWordOf = new Map<string, number>()

  return {
    say({ kind, by, on, with: other, pause: [least, most] = [2, 12], body }) {
      const known = recordKinds[kind]
      if (known === undefined) throw new RangeError(`The demo says a ${kind}, which is no kind of record`)
      const plain = JSON.parse(JSON.stringify(body)) as Record<string, unknown>
      const momentsNamed = known.refersTo(plain).map((id) => {
        const moment = momentOf.get(id)
        if (moment === undefined) throw new RangeError(`A ${kind} of the demo names ${id}, not said yet`)
        return moment
      })
      const breath = other && momentOf.get(other)
      const morning = Date.parse(`${on}T00:00:00Z`) + minutes(random, dayBegins, firstWordMinutes)
      const lastWord = lastWordOf.get(`${by} ${on}`)
      const pause = minutes(random, least, most - least)
      const atMs = breath
        ? breath + 1 + Math.floor(random() * 900)
        : Math.max(
            lastWord === undefined ? morning : lastWord + pause,
            ...momentsNamed.map((at) => at + pause),
          )
      lastWordOf.set(`${by} ${on}`, atMs)
      const id = seededId(atMs, random)
      const { id: author, device } = demoPeople[by]
      const saidAt = new Date(atMs).toISOString()
      said.push({ id, kind, version: known.version, body: plain, saidAt, author, device, atMs })
      momentOf.set(id, atMs)
      return id
    },
    records: () =>
      said.toSorted((one, other) => one.atMs - other.atMs).map(({ atMs: _atMs, ...record }) => record),
  }
}

/** So many minutes at the least, and up to `spread` more, in milliseconds, with odd seconds. */
const minutes = (random: () => number, least: number, spread: number): number =>
  Math.floor((least + random() * spread) * minuteMs)
