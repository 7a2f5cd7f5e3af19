import type { Database } from 'better-sqlite3'
import type { Person } from './session'

export type ListedPerson = Person & { active: boolean }

/** Everybody who was ever added, by name. */
export function listPeople(database: Database): ListedPerson[] {
  return database
    .prepare<[], Person & { active: 0 | 1 }>(
      'SELECT "id", "name", "role", "active" FROM "Person" ORDER BY "signInName"',
    )
    .all()
    .map((person) => ({ ...person, active: person.active === 1 }))
}
