import type { Database } from 'better-sqlite3'
import type { Role } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import type { Log } from '../log/openLog'
import { listDevices } from './listDevices'

/** A record, and the people who have it on a device that they are signed in on. */
export type Held = { id: string; personIds: string[] }

/**
 * Who has records on a device: a device holds what came before the number up to which it has examined the log. A
 * device that somebody is signed out on counts for nothing, because they can't open the record there.
 * @param role of whoever asks: what it may not see is left out, as is what is not in the log
 */
export function whoHolds(database: Database, log: Log, recordIds: readonly string[], role: Role): Held[] {
  const devices = listDevices(database).filter(({ signedIn }) => signedIn)
  return recordIds.flatMap((id): Held[] => {
    const record = log.lookup(id)
    if (record === undefined || !recordKinds[record.kind]?.maySee.includes(role)) return []
    const holding = devices.filter(({ examinedSeq }) => examinedSeq >= record.seq)
    return [{ id, personIds: [...new Set(holding.map(({ personId }) => personId))].sort() }]
  })
}
