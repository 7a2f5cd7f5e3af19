import type { Database } from 'better-sqlite3'
import { failure, type Result, success } from '@/lib/core/result'
import type { Role } from '@/lib/records/envelope'
import { endDevicesOf } from '../devices/endings'
import { type PersonEvent, writeEvent } from './events'
import { asStored } from './moment'
import { foldName } from './names'

/** Who does something: a manager's or the person's own id, or undefined for the server's terminal. */
export type By = string | undefined

type NewPerson = { id: string; name: string; role: Role; passwordHash: string }

/**
 * Adds a person who may sign in. Everything in this file is one synchronous transaction, and writes its event in it.
 *
 * @throws RangeError when somebody has that id
 */
export function addPerson(
  database: Database,
  person: NewPerson,
  event: Pick<PersonEvent, 'kind' | 'byId'>,
  now: Date,
): Result<{ id: string }> {
  const { id, name, role, passwordHash } = person
  return database
    .transaction(() => {
      if (findPerson(database, id)) throw new RangeError(`addPerson: somebody has the id ${id}`)
      if (isNameTaken(database, name)) return nameTaken(name)
      const at = asStored(now)
      insertPerson(database, { id, name, role }, now)
      database
        .prepare(
          `INSERT INTO "Account" ("id", "accountId", "providerId", "personId", "password", "createdAt", "updatedAt")
           VALUES (?, ?, 'credential', ?, ?, ?, ?)`,
        )
        .run(id, id, id, passwordHash, at, at)
      writeEvent(database, { ...event, personId: id, detail: { name, role } }, now)
      return success({ id })
    })
    .immediate()
}

/**
 * Adds the author of what an office program records: a person without a password, who can't sign in. Called inside the
 * transaction that makes its token, after it was seen that nobody has the name.
 */
export function addProgram(
  database: Database,
  { id, name, role }: Omit<NewPerson, 'passwordHash'>,
  by: string,
  now: Date,
): string {
  insertPerson(database, { id, name, role }, now)
  writeEvent(database, { kind: 'added', personId: id, byId: by, detail: { name, role } }, now)
  return id
}

function insertPerson(
  database: Database,
  { id, name, role }: Omit<NewPerson, 'passwordHash'>,
  now: Date,
): void {
  const at = asStored(now)
  database
    .prepare(
      `INSERT INTO "Person" ("id", "name", "signInName", "role", "email", "createdAt", "updatedAt")
       VALUES (?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(id, name, foldName(name), role, `${id}@people.invalid`, at, at) // .invalid: RFC 2606, never anybody's
}

/** Gives a person another role. The last active manager keeps it. */
export function changeRole(database: Database, id: string, role: Role, by: By, now: Date): Result<true> {
  return change(database, id, (person) => {
    if (person.role === role) return success(true)
    if (role === 'manager' && isProgram(database, id)) return neverAManager
    if (role !== 'manager' && isLastManager(database, person)) return lastManager('change the role of')
    database
      .prepare('UPDATE "Person" SET "role" = ?, "updatedAt" = ? WHERE "id" = ?')
      .run(role, asStored(now), id)
    closeLinksMadeBy(database, id, now)
    endTokensMadeBy(database, id, now)
    const detail = { from: person.role, to: role }
    writeEvent(database, { kind: 'role changed', personId: id, byId: by, detail }, now)
    return success(true)
  })
}

/**
 * Ends a person's sign-ins and lets them sign in no more, or again. Their records stay. What still waits on their
 * devices is set aside for a manager at the next contact.
 */
export function changeActive(
  database: Database,
  id: string,
  active: boolean,
  by: By,
  now: Date,
): Result<true> {
  return change(database, id, (person) => {
    if (Boolean(person.active) === active) return success(true)
    if (!active && isLastManager(database, person)) return lastManager('deactivate')
    database
      .prepare('UPDATE "Person" SET "active" = ?, "updatedAt" = ? WHERE "id" = ?')
      .run(active ? 1 : 0, asStored(now), id)
    if (!active) {
      endDevicesOf(database, id, by ?? id, now)
      endSessions(database, id)
      closeResets(database, id, now)
      closeLinksMadeBy(database, id, now)
      endTokensMadeBy(database, id, now)
    }
    writeEvent(database, { kind: active ? 'reactivated' : 'deactivated', personId: id, byId: by }, now)
    return success(true)
  })
}

/** Ends all sessions of a person: a lost phone is signed out. */
export function signOutEverywhere(database: Database, id: string, by: By, now: Date): Result<true> {
  return change(database, id, () => {
    endSessions(database, id)
    writeEvent(database, { kind: 'signed out everywhere', personId: id, byId: by }, now)
    return success(true)
  })
}

/** Sets a password by its hash, ends all sessions and calls back reset links that are still open. */
export function setPassword(
  database: Database,
  id: string,
  passwordHash: string,
  event: { kind: 'password set by link' | 'password changed'; byId: By },
  now: Date,
): Result<true> {
  return change(database, id, () => {
    database
      .prepare(
        `UPDATE "Account" SET "password" = ?, "updatedAt" = ? WHERE "personId" = ? AND "providerId" = 'credential'`,
      )
      .run(passwordHash, asStored(now), id)
    endSessions(database, id)
    closeResets(database, id, now)
    writeEvent(database, { ...event, personId: id }, now)
    return success(true)
  })
}

/** Whether somebody, active or not, signs in under this name. */
export function isNameTaken(database: Database, name: string): boolean {
  return database.prepare('SELECT 1 FROM "Person" WHERE "signInName" = ?').get(foldName(name)) !== undefined
}

export const nameTaken = (name: string) =>
  failure('name-taken', `Somebody is called ${name} here already. Add an initial or a second name.`)

type Row = { id: string; name: string; role: Role; active: 0 | 1 }

const findPerson = (database: Database, id: string): Row | undefined =>
  database
    .prepare<[string], Row>('SELECT "id", "name", "role", "active" FROM "Person" WHERE "id" = ?')
    .get(id)

function change<T>(database: Database, id: string, work: (person: Row) => Result<T>): Result<T> {
  return database
    .transaction(() => {
      const person = findPerson(database, id)
      return person
        ? work(person)
        : failure('no-such-person', 'There is nobody with that id. Load the list again.')
    })
    .immediate()
}

function isLastManager(database: Database, person: Row): boolean {
  if (person.role !== 'manager' || !person.active) return false
  const others = `SELECT 1 FROM "Person" WHERE "role" = 'manager' AND "active" AND "id" <> ?`
  return database.prepare(others).get(person.id) === undefined
}

const lastManager = (what: 'deactivate' | 'change the role of') =>
  failure(
    'last-manager',
    `You can't ${what} the last active manager: nobody could let people in any more. Make somebody else a manager first.`,
  )

/** Whether somebody is an office program: an author by tokens, without a password. */
export const isProgram = (database: Database, id: string): boolean =>
  database.prepare('SELECT 1 FROM "ApiToken" WHERE "personId" = ?').get(id) !== undefined

const neverAManager = failure(
  'a-program',
  'An office program is never a manager: what only a manager may do needs a person who answers for it.',
)

// A session that a manager has ended on a device stays until the device has handed over what waits there.
const endSessions = (database: Database, id: string) =>
  database
    .prepare(
      `DELETE FROM "Session" WHERE "personId" = ? AND "id" NOT IN
         (SELECT "sessionId" FROM "DeviceEnding" WHERE "emptiedAt" IS NULL AND "sessionId" IS NOT NULL)`,
    )
    .run(id)

const closeResets = (database: Database, id: string, now: Date) =>
  database
    .prepare('UPDATE "OneTimeLink" SET "closedAt" = ? WHERE "personId" = ? AND "closedAt" IS NULL')
    .run(asStored(now), id)

// What somebody could do as a manager must not outlast it: their open invitations and resets are called back.
const closeLinksMadeBy = (database: Database, id: string, now: Date) =>
  database
    .prepare('UPDATE "OneTimeLink" SET "closedAt" = ? WHERE "madeBy" = ? AND "closedAt" IS NULL')
    .run(asStored(now), id)

// And so do the tokens that they made, which they may still know.
const endTokensMadeBy = (database: Database, id: string, now: Date) =>
  database
    .prepare('UPDATE "ApiToken" SET "revokedAt" = ? WHERE "madeBy" = ? AND "revokedAt" IS NULL')
    .run(asStored(now), id)
