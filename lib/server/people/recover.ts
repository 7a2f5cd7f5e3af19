import type { Database } from 'better-sqlite3'
import { failure, type Result } from '@/lib/core/result'
import type { MadeLink } from './links'
import { foldName } from './names'
import { makeReset } from './resets'

/**
 * A reset link for a manager who can't sign in, made by whoever has the server's terminal.
 *
 * @param name needed when there are several managers
 */
export function recoverManager(
  database: Database,
  name: string | undefined,
  now: Date,
): Result<MadeLink & { name: string }> {
  const managers = database
    .prepare<[], { id: string; name: string }>(
      `SELECT "id", "name" FROM "Person" WHERE "role" = 'manager' AND "active" ORDER BY "signInName"`,
    )
    .all()
  const [first, ...others] = managers.filter(
    (manager) => name === undefined || foldName(manager.name) === foldName(name),
  )
  const names = managers.map((manager) => manager.name).join(', ')
  if (managers.length === 0) {
    return failure(
      'no-manager',
      'There is no manager yet. Start the server (npm start); it prints a code for setting up the first.',
    )
  }
  if (!first)
    return failure('no-such-manager', `No active manager is called ${name}. The managers are: ${names}.`)
  if (others.length > 0) {
    return failure(
      'which-manager',
      `Say which of the managers: ${names}. For instance: npm run recover-manager -- "${first.name}"`,
    )
  }
  const made = makeReset(database, first.id, undefined, now)
  return made.ok ? { ok: true, value: { ...made.value, name: first.name } } : made
}
