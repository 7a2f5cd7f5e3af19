import { type DBSchema, deleteDB, type IDBPDatabase, openDB } from 'idb'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { type Role, roles } from '@/lib/records/roles'
import { appendToPages } from './logPages'
import type { KeptLookUp } from './lookUps'
import type { OutboxItem } from './outbox'
import type { KeptPicture } from './picture/pictures'
import { toldByDone } from './toldByDone'

/** What one person's device keeps of the team's log. A change of role starts it anew. */
export interface FileSchema extends DBSchema {
  /** What was sent from here and has not come back by the feed yet. */
  records: { key: string; value: HeldRecord }
  /** What came by the feed. */
  pages: { key: number; value: readonly HeldRecord[] }
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
  lookUps: { key: string; value: KeptLookUp }
}

export type FileDatabase = IDBPDatabase<FileSchema>
export type OwnDatabase = IDBPDatabase<OwnSchema>

// An upgrade makes what is not there yet, whatever version the browser holds; what is there stays as it is.

/**
 * Lets go of a database that another page wants to upgrade or to delete, and that would have to wait for ever otherwise.
 * This page's program is then the older one: it has to be loaded anew.
 */
const letGo = (onTaken: () => void) => ({
  blocking(_current: number, _wanted: number | null, event: IDBVersionChangeEvent) {
    ;(event.target as IDBDatabase).close()
    onTaken()
  },
})

export const fileName = (personId: string, role: string): string => `inchwater file ${personId} ${role}`

/**
 * Opens what the device keeps of the log for a role. What it kept for another role of that person goes: it may hold
 * more than the new role may see.
 */
export async function openFileDatabase(
  personId: string,
  role: Role,
  onTaken: () => void = () => {},
): Promise<FileDatabase> {
  for (const other of roles) if (other !== role) void deleteDB(fileName(personId, other))
  return openDB<FileSchema>(fileName(personId, role), 3, {
    ...letGo(onTaken),
    upgrade(database, _before, _now, upgrading) {
      const there = database.objectStoreNames
      const hasRecords = there.contains('records')
      if (!hasRecords) database.createObjectStore('records', { keyPath: 'id' })
      if (!there.contains('facts')) database.createObjectStore('facts')
      if (!there.contains('picturesHeld')) database.createObjectStore('picturesHeld')
      if (there.contains('pages')) return
      const pages = database.createObjectStore('pages')
      // A program that knew no pages kept everything in the one store.
      if (!hasRecords) return
      const records = upgrading.objectStore('records')
      // Aborted, the file is as it was, and the opening that fails says why. What failed may have aborted it already.
      upgrading.done.catch(toldByDone)
      moveIntoPages()
        .catch(() => upgrading.abort())
        .catch(toldByDone)
      async function moveIntoPages(): Promise<void> {
        const after = Number((await upgrading.objectStore('facts').get('after')) ?? 0)
        const all = await records.getAll()
        const isFed = ({ seq }: HeldRecord): boolean => seq !== undefined && seq <= after
        void records.clear().catch(toldByDone)
        for (const record of all) if (!isFed(record)) void records.put(record).catch(toldByDone)
        await appendToPages(pages, all.filter(isFed))
      }
    },
  })
}

export const openOwnDatabase = (personId: string, onTaken: () => void = () => {}): Promise<OwnDatabase> =>
  openDB<OwnSchema>(`inchwater own ${personId}`, 3, {
    ...letGo(onTaken),
    upgrade(database) {
      const there = database.objectStoreNames
      if (!there.contains('outbox')) database.createObjectStore('outbox', { keyPath: 'id' })
      if (!there.contains('drafts')) database.createObjectStore('drafts')
      if (!there.contains('pictures')) database.createObjectStore('pictures', { keyPath: 'sha256' })
      if (!there.contains('pictureBytes')) database.createObjectStore('pictureBytes')
      if (!there.contains('lookUps')) database.createObjectStore('lookUps', { keyPath: 'key' })
    },
  })
