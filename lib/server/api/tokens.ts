import { createHash, randomBytes, randomUUID } from 'node:crypto'
import type { Database } from 'better-sqlite3'
import { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import type { Role } from '@/lib/records/envelope'
import { day } from '@/lib/records/fields'
import { addProgram, nameTaken } from '../people/changes'
import { writeEvent } from '../people/events'
import { asStored } from '../people/moment'
import { foldName, nameField } from '../people/names'
import type { Person } from '../people/session'

/** What an office program may be. Never a manager: what only a manager may do needs a person who answers for it. */
export const programRoles = ['dispatcher', 'technician'] as const satisfies readonly Role[]

export const tokenForm = z.object({
  name: nameField,
  role: z.enum(programRoles, 'Choose one of the two roles. An office program is never a manager.'),
  /** The last day on which it works. */
  until: day,
})

export const tokenEndForm = z.object({})

/** A token just made: the secret is here and nowhere else. */
export type MadeToken = { token: string; expiresAt: string }

/** How a token begins, so that one that got loose is known for what it is. */
const tokenStart = 'inchwater_'

/** The longest that a token may work, in days: somebody looks at each once a year (common practice, no published source). */
export const mostDays = 366

const dayMs = 24 * 60 * 60 * 1000

/**
 * Makes a token of 256 random bits, of which only the SHA-256 is kept. It belongs to an office program: an author of its
 * own, who has no password and can't sign in. A second token of the same name belongs to the same author.
 *
 * @param by the manager's id
 */
export function makeToken(
  database: Database,
  { name, role, until }: z.infer<typeof tokenForm>,
  by: string,
  now: Date,
): Result<MadeToken> {
  const end = Date.parse(until) + dayMs
  if (end <= now.getTime()) return failure('over-already', 'That day is over. Choose a later one.')
  if (end > now.getTime() + (mostDays + 1) * dayMs) {
    return failure('too-long', `A token works for at most ${mostDays} days. Make a new one before it ends.`)
  }
  return database
    .transaction((): Result<MadeToken> => {
      const program = programOf(database, { name, role }, by, now)
      if (!program.ok) return program
      const token = tokenStart + randomBytes(32).toString('base64url')
      const expiresAt = asStored(new Date(end))
      const personId = program.value
      database
        .prepare(
          `INSERT INTO "ApiToken" ("id", "personId", "secretHash", "madeBy", "madeAt", "expiresAt") VALUES (?, ?, ?, ?, ?, ?)`,
        )
        .run(randomUUID(), personId, hashOf(token), by, asStored(now), expiresAt)
      writeEvent(database, { kind: 'token made', personId, byId: by, detail: { until } }, now)
      return success({ token, expiresAt })
    })
    .immediate()
}

/** The author of a program's records: the one of that name, or a new one. */
function programOf(
  database: Database,
  { name, role }: { name: string; role: Role },
  by: string,
  now: Date,
): Result<string> {
  const known = database
    .prepare<[string], Person & { active: 0 | 1; isProgram: 0 | 1 }>(
      `SELECT "id", "name", "role", "active", EXISTS (SELECT 1 FROM "ApiToken" WHERE "personId" = "Person"."id") AS "isProgram"
       FROM "Person" WHERE "signInName" = ?`,
    )
    .get(foldName(name))
  if (known === undefined) return success(addProgram(database, { id: randomUUID(), name, role }, by, now))
  if (!known.isProgram) return nameTaken(name)
  if (!known.active) {
    return failure('taken-off', `${known.name} was taken off the team. Take it back under People first.`)
  }
  return known.role === role
    ? success(known.id)
    : failure('other-role', `${known.name} is a ${known.role}. Choose that role, or another name.`)
}

/** Ends a token at once. One that has ended stays listed. */
export function endToken(database: Database, id: string, by: string, now: Date): Result<true> {
  return database
    .transaction((): Result<true> => {
      const row = database
        .prepare<[string], { personId: string; revokedAt: string | null }>(
          'SELECT "personId", "revokedAt" FROM "ApiToken" WHERE "id" = ?',
        )
        .get(id)
      if (row === undefined) {
        return failure('no-such-token', 'There is no token with that id. Load the list again.')
      }
      if (row.revokedAt !== null) return success(true)
      database.prepare('UPDATE "ApiToken" SET "revokedAt" = ? WHERE "id" = ?').run(asStored(now), id)
      writeEvent(database, { kind: 'token ended', personId: row.personId, byId: by }, now)
      return success(true)
    })
    .immediate()
}

export type ListedToken = {
  id: string
  name: string
  role: Role
  madeBy: string
  madeAt: string
  expiresAt: string
  lastUsedAt: string | null
  state: 'works' | 'has ended' | 'was ended' | 'taken off'
}

/** Every token there ever was, the newest first; never a secret. */
export function listTokens(database: Database, now: Date): ListedToken[] {
  return database
    .prepare<[], Omit<ListedToken, 'state'> & { revokedAt: string | null; active: 0 | 1 }>(
      `SELECT "t"."id", "p"."name", "p"."role", "m"."name" AS "madeBy", "t"."madeAt", "t"."expiresAt", "t"."lastUsedAt",
         "t"."revokedAt", "p"."active"
       FROM "ApiToken" AS "t" JOIN "Person" AS "p" ON "p"."id" = "t"."personId" JOIN "Person" AS "m" ON "m"."id" = "t"."madeBy"
       ORDER BY "t"."madeAt" DESC, "t"."id"`,
    )
    .all()
    .map(({ revokedAt, active, ...token }) => ({
      ...token,
      state:
        revokedAt !== null
          ? 'was ended'
          : token.expiresAt <= asStored(now)
            ? 'has ended'
            : active
              ? 'works'
              : 'taken off',
    }))
}

/** A program that calls: its author, and which of its tokens it came with. */
export type Caller = { person: Person; tokenId: string }

/** How often the last use is written down: a program that asks all day writes once a minute. */
const noteEveryMs = 60_000

/** Whose token this is, if it works now. */
export function callerOf(database: Database, token: string, now: Date): Caller | undefined {
  const row = database
    .prepare<[string, string], Person & { tokenId: string; lastUsedAt: string | null }>(
      `SELECT "p"."id", "p"."name", "p"."role", "t"."id" AS "tokenId", "t"."lastUsedAt"
       FROM "ApiToken" AS "t" JOIN "Person" AS "p" ON "p"."id" = "t"."personId"
       WHERE "t"."secretHash" = ? AND "t"."revokedAt" IS NULL AND "t"."expiresAt" > ? AND "p"."active"`,
    )
    .get(hashOf(token), asStored(now))
  if (row === undefined) return undefined
  const { tokenId, lastUsedAt, ...person } = row
  if (lastUsedAt === null || Date.parse(lastUsedAt) + noteEveryMs <= now.getTime()) {
    database.prepare('UPDATE "ApiToken" SET "lastUsedAt" = ? WHERE "id" = ?').run(asStored(now), tokenId)
  }
  return { person, tokenId }
}

// A secret of 256 random bits can't be guessed from its hash, so a plain one does (unlike a password's).
const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')
