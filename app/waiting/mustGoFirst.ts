import type { DeviceState } from '@/lib/device/device'
import type { OutboxItem } from '@/lib/device/outbox'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'

/** What a waiting record cannot go before. */
export type MustGoFirst = {
  /** Refused: somebody has to deal with them first. */
  refused: RecordEnvelope[]
  /** Not sent yet: they go first, by themselves. */
  waiting: RecordEnvelope[]
  /** How many are neither in the log nor on this device any more: without them it can never go. */
  gone: number
}

const namedBy = ({ kind, body }: RecordEnvelope): Set<string> =>
  new Set(recordKinds[kind]?.refersTo(body) ?? [])

/** Which records have to be in the log before a waiting one, and are not. */
export function mustGoFirst(
  record: RecordEnvelope,
  {
    file,
    waiting,
    refused,
    freshAt,
    locked,
  }: Pick<DeviceState, 'file' | 'waiting' | 'refused' | 'freshAt' | 'locked'>,
): MustGoFirst {
  const ids = namedBy(record)
  const among = (items: readonly OutboxItem[]) =>
    items.flatMap((item) => (ids.has(item.record.id) ? [item.record] : []))
  const first = { refused: among(refused), waiting: among(waiting) }
  const here = new Set([...first.refused, ...first.waiting].map(({ id }) => id))
  // Before the log was read once, and while it may not be read, this device cannot tell what is in it.
  const isGone = (id: string) => freshAt !== undefined && !locked && !here.has(id) && !file.records.has(id)
  return { ...first, gone: [...ids].filter(isGone).length }
}

/** How many waiting records cannot go without this one. */
export const waitingFor = (id: string, waiting: readonly OutboxItem[]): number =>
  waiting.filter(({ record }) => namedBy(record).has(id)).length
