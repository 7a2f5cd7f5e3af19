import type { RecordEnvelope } from '@/lib/records/envelope'
import type { HeldRecord } from '@/lib/records/fold/entry'
import type { OutboxItem } from './outbox'

/**
 * What a person said on any device and this one holds, to be sent once more: the server went back to a back-up, and what
 * was stored after that is on the devices alone. What the server has, it knows by its id. What was withheld since is not
 * sent: it is gone here as well.
 *
 * @param lastOrder the highest order in the outbox so far
 */
export function ownToSendAgain(
  held: Iterable<HeldRecord>,
  { me, waiting, lastOrder }: { me: string; waiting: readonly OutboxItem[]; lastOrder: number },
): OutboxItem[] {
  const there = new Set(waiting.map(({ record }) => record.id))
  return [...held]
    .filter(({ id, author, withheld }) => author === me && withheld === undefined && !there.has(id))
    .sort((one, other) => (one.seq ?? 0) - (other.seq ?? 0))
    .map((record, place) => ({ record: asSent(record), order: lastOrder + 1 + place }))
}

/**
 * What a person said that the log does not have where it was stored: the server went back to a back-up that is older
 * than the record and newer than what this device had fetched, so that what stands for the log still fits.
 *
 * @param after the number that was asked after
 * @param page what came: everything up to `next`, and nothing behind it unless there is more
 */
export function ownMissingIn(
  { records, next, more }: { records: readonly HeldRecord[]; next: number; more: boolean },
  { held, me, after }: { held: Iterable<HeldRecord>; me: string; after: number },
): HeldRecord[] {
  const came = new Set(records.map(({ id }) => id))
  const last = more ? next : Number.POSITIVE_INFINITY
  return [...held].filter(
    ({ id, author, seq }) =>
      author === me && seq !== undefined && seq > after && seq <= last && !came.has(id),
  )
}

/** Without what the log added to it. */
const asSent = ({ id, kind, version, body, saidAt, author, device }: HeldRecord): RecordEnvelope => ({
  id,
  kind,
  version,
  body,
  saidAt,
  author,
  device,
})
