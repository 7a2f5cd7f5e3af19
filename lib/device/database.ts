import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { HeldRecord } from '@/lib/records/fold/entry'
import type { OutboxItem } from './outbox'

/** What one person's device keeps of the team's log. A change of role starts it anew. */
interface FileSchema extends DBSchema {
  records: { key: string; value: HeldRecord }
  facts: { key: string; value: unknown }
}

/** What one person said and typed on this device. It outlives a change of role and an empty team file. */
interface OwnSchema extends DBSchema {
  outbox: { key: string; value: OutboxItem & { id: string } }
  drafts: { key: string; value: unknown }
}

export type FileDatabase = IDBPDatabase<FileSchema>
export type OwnDatabase = IDBPDatabase<OwnSchema>

export const openFileDatabase = (personId: string, role: string): Promise<FileDatabase> =>
  openDB<FileSchema>(`inchwater file ${personId} ${role}`, 1, {
    upgrade(database) {
      database.createObjectStore('records', { keyPath: 'id' })
      database.createObjectStore('facts')
    },
  })

export const openOwnDatabase = (personId: string): Promise<OwnDatabase> =>
  openDB<OwnSchema>(`inchwater own ${personId}`, 1, {
    upgrade(database) {
      database.createObjectStore('outbox', { keyPath: 'id' })
      database.createObjectStore('drafts')
    },
  })
