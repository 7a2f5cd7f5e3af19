import { createHash, randomBytes, randomInt, randomUUID } from 'node:crypto'
import type { Database } from 'better-sqlite3'
import { z } from 'zod'
import type { Role } from '@/lib/records/envelope'
import { asStored } from './moment'

/** What a one-time secret opens: the first manager's set-up, an invitation, or the setting of a new password. */
export type LinkPurpose =
  | { purpose: 'set-up' }
  | { purpose: 'invitation'; name: string; role: Role }
  | { purpose: 'reset'; personId: string }

export type OpenLink = LinkPurpose & { id: string; madeBy: string | undefined; expiresAt: string }

const notWhole = 'The link is not whole. Open it again as it was sent, or ask a manager for a new one.'

/** The secret of a link, as a form brings it back. */
export const tokenField = z.string(notWhole).min(1, notWhole).max(200, notWhole)

/** A link just made: the secret is here and nowhere else. */
export type MadeLink = { secret: string; expiresAt: string }

const hour = 60 * 60 * 1000
const lifetimes = { 'set-up': 24 * hour, invitation: 7 * 24 * hour, reset: 24 * hour }

/**
 * Makes a one-time secret: 256 random bits, or for set-up a code of 100 bits that can be typed. Only its SHA-256 is
 * kept. An older link for the same person, name or set-up is closed, so that the newest is the only one.
 *
 * @param madeBy the manager's id; undefined when made in the server's terminal
 */
export function makeLink(
  database: Database,
  link: LinkPurpose,
  madeBy: string | undefined,
  now: Date,
): MadeLink {
  const secret = link.purpose === 'set-up' ? typeableCode() : randomBytes(32).toString('base64url')
  const expiresAt = asStored(new Date(now.getTime() + lifetimes[link.purpose]))
  const { personId, name, role } = { personId: null, name: null, role: null, ...link }
  database
    .prepare(
      `UPDATE "OneTimeLink" SET "closedAt" = ?
       WHERE "closedAt" IS NULL AND "purpose" = ? AND "personId" IS ? AND lower("name") IS lower(?)`,
    )
    .run(asStored(now), link.purpose, personId, name)
  database
    .prepare(
      `INSERT INTO "OneTimeLink" ("id", "purpose", "secretHash", "personId", "name", "role", "madeBy", "madeAt", "expiresAt")
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(
      randomUUID(),
      link.purpose,
      hashOf(secret),
      personId,
      name,
      role,
      madeBy ?? null,
      asStored(now),
      expiresAt,
    )
  return { secret, expiresAt }
}

/** The open, unexpired link of that purpose which this secret belongs to. */
export function readLink(
  database: Database,
  purpose: LinkPurpose['purpose'],
  secret: string,
  now: Date,
): OpenLink | undefined {
  const row = database
    .prepare<string[], OpenLinkRow>(
      `SELECT "id", "purpose", "personId", "name", "role", "madeBy", "expiresAt" FROM "OneTimeLink"
       WHERE "secretHash" = ? AND "purpose" = ? AND "closedAt" IS NULL AND "expiresAt" > ?`,
    )
    .get(hashOf(secret), purpose, asStored(now))
  return row && ({ ...row, madeBy: row.madeBy ?? undefined } as OpenLink)
}

/** Closes a link. Answers false when somebody else was quicker: then it must open nothing. */
export function closeLink(database: Database, id: string, now: Date): boolean {
  const close = database.prepare(
    'UPDATE "OneTimeLink" SET "closedAt" = ? WHERE "id" = ? AND "closedAt" IS NULL',
  )
  return close.run(asStored(now), id).changes === 1
}

type OpenLinkRow = Record<'id' | 'purpose' | 'expiresAt', string> &
  Record<'personId' | 'name' | 'role' | 'madeBy', string | null>

// Crockford's Base32 has no I, L, O and U, and reads I and L as 1, O as 0.
const letters = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'

function typeableCode(): string {
  const group = () => Array.from({ length: 5 }, () => letters[randomInt(letters.length)]).join('')
  return [group(), group(), group(), group()].join('-')
}

const asMeant = (secret: string): string => {
  const code = secret.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1')
  return /^[0-9A-HJKMNP-TV-Z]{20}$/.test(code) ? code : secret
}

const hashOf = (secret: string): string => createHash('sha256').update(asMeant(secret)).digest('base64url')
