import type { Database } from 'better-sqlite3'
import { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import { readLink, tokenField } from './links'

export const lookForm = z.object({ token: tokenField })

export type LinkSeen = { purpose: 'invitation' | 'reset'; name: string; expiresAt: string }

/** Whom an open invitation or reset link is for, so that its page can say so before a password is typed. */
export function lookAtLink(database: Database, token: string, now: Date): Result<LinkSeen> {
  const link = readLink(database, 'invitation', token, now) ?? readLink(database, 'reset', token, now)
  if (link?.purpose === 'invitation') {
    return success({ purpose: link.purpose, name: link.name, expiresAt: link.expiresAt })
  }
  const named = database.prepare<[string], { name: string }>(
    'SELECT "name" FROM "Person" WHERE "id" = ? AND "active"',
  )
  const person = link?.purpose === 'reset' ? named.get(link.personId) : undefined
  if (!link || !person)
    return failure('dead-link', 'This link was used, replaced, or is too old. Ask a manager for a new one.')
  return success({ purpose: 'reset', name: person.name, expiresAt: link.expiresAt })
}
