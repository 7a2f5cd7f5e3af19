import { randomBytes } from 'node:crypto'
import type { Database } from 'better-sqlite3'
import { addPerson, changeActive, isNameTaken } from '../people/changes'
import { listPeople } from '../people/list'
import { nameField } from '../people/names'
import { hashPassword } from '../people/passwords'
import type { DocumentPerson } from './logDocument'

/** Whom the log names: added as people who may not sign in, or here already under the same id. */
export type TakenOver = { added: number; known: number }

/**
 * Puts the authors of a log among the people, under the ids that the log names, so that their records carry their
 * names. Nobody can sign in by that: they are inactive and their password is one that nobody knows. A manager can let
 * them in again and give them a link for a new password; then they go on where they left off.
 *
 * Called inside the transaction that takes in the log. A name that somebody here has already gets “(taken over)”.
 */
export async function takeOverPeople(
  db: Database,
  people: readonly DocumentPerson[],
  by: string,
  now: Date,
): Promise<TakenOver> {
  const known = new Set(listPeople(db).map(({ id }) => id))
  const unknown = people.filter(({ id }) => !known.has(id))
  const passwordHash = await hashPassword(randomBytes(32).toString('base64url'))
  for (const { id, name, role } of unknown) {
    const free = freeName(db, name)
    const added = addPerson(db, { id, name: free, role, passwordHash }, { kind: 'taken over', byId: by }, now)
    if (!added.ok) throw new RangeError(added.problem.message)
    changeActive(db, id, false, by, now)
  }
  return { added: unknown.length, known: people.length - unknown.length }
}

const longestName = 60

function freeName(db: Database, name: string): string {
  const fits = nameField.safeParse(name)
  const plain = fits.success ? fits.data : 'Somebody'
  for (let count = 0; ; count++) {
    const behind = count === 0 ? '' : count === 1 ? ' (taken over)' : ` (taken over ${count})`
    const free = `${plain.slice(0, longestName - behind.length).trim()}${behind}`
    if (!isNameTaken(db, free)) return free
  }
}
