import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { HeldRecord } from '@/lib/records/fold/entry'
import type { OutboxItem } from './outbox'
import type { KeptPicture } from './picture/pictures'

/** What one person's device keeps of the team's log. A change of role starts it anew. */
interface FileSchema extends DBSchema {
  records: { key: string; value: HeldRecord }
  facts: { key: string; value: unknown }
  /** The hashes of the pictures that the server holds. */
  picturesHeld: { key: string; value: true }
}

/** What one person said and typed on this device. It outlives a change of role and an empty team file. */
interface OwnSchema extends DBSchema {
  outbox: { key: string; value: OutboxItem & { id: string } }
  drafts: { key: string; value: unknown }
  pictures: { key: string; value: KeptPicture }
  pictureBytes: { key: string; value: ArrayBuffer }
}

export type FileDatabase = IDBPDatabase<FileSchema>
export type OwnDatabase = IDBPDatabase<OwnSchema>

// An upgrade makes what is not there yet, whatever version the browser holds; what is there stays as it is.

export const openFileDatabase = (personId: string, role: string): Promise<FileDatabase> =>
  openDB<FileSchema>(`inchwater file ${personId} ${role}`, 2, {
    upgrade(database) {
      const there = database.objectStoreNames
      if (!there.contains('records')) database.createObjectStore('records', { keyPath: 'id' })
      if (!there.contains('facts')) database.createObjectStore('facts')
      if (!there.contains('picturesHeld')) database.createObjectStore('picturesHeld')
    },
  })

export const openOwnDatabase = (personId: string): Promise<OwnDatabase> =>
  openDB<OwnSchema>(`inchwater own ${personId}`, 2, {
    upgrade(database) {
      const there = database.objectStoreNames
      if (!there.contains('outbox')) database.createObjectStore('outbox', { keyPath: 'id' })
      if (!there.contains('drafts')) database.createObjectStore('drafts')
      if (!there.contains('pictures')) database.createObjectStore('pictures', { keyPath: 'sha256' })
      if (!there.contains('pictureBytes')) database.createObjectStore('pictureBytes')
    },
  })
