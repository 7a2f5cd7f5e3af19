import type { Database } from 'better-sqlite3'
import type { Person } from './session'

/** `program`: an office program, which records by a token and can't sign in. */
export type ListedPerson = Person & { active: boolean; program?: true }

/** Everybody who was ever added, by name. */
export function listPeople(database: Database): ListedPerson[] {
  return database
    .prepare<[], Person & Record<'active' | 'program', 0 | 1>>(
      `SELECT "id", "name", "role", "active", EXISTS (SELECT 1 FROM "ApiToken" WHERE "personId" = "Person"."id") AS "program"
       FROM "Person" ORDER BY "signInName"`,
    )
    .all()
    .map(({ active, program, ...person }) => ({
      ...person,
      active: active === 1,
      ...(program === 1 ? { program: true as const } : {}),
    }))
}
