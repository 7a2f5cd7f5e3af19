import { createHash } from 'node:crypto'
import type { Database } from 'better-sqlite3'

/** How guesses at one thing are slowed: so many are free, then every wrong one doubles the wait up to the longest. */
type Pace = { free: number; firstWaitMs: number; longestWaitMs: number }

const second = 1000
const minute = 60 * second
const forgottenAfterMs = 60 * minute

// Common practice, no published source. From one address the wait grows to a quarter of an hour; an account as a
// whole is shut for two minutes at the most, and never to a device that signed in to it before, so guessing from
// elsewhere can't keep its owner out.
const paces = {
  account: { free: 20, firstWaitMs: 2 * second, longestWaitMs: 2 * minute },
  'account at address': { free: 5, firstWaitMs: 5 * second, longestWaitMs: 15 * minute },
  'account on device': { free: 5, firstWaitMs: 5 * second, longestWaitMs: 15 * minute },
  address: { free: 20, firstWaitMs: 5 * second, longestWaitMs: 15 * minute },
  'set-up': { free: 20, firstWaitMs: 2 * second, longestWaitMs: 2 * minute },
} satisfies Record<string, Pace>

/** What a guess counts against, e.g. `{ of: 'account', which: ['mara otell'] }`. */
export type Target = { of: keyof typeof paces; which: string[] }

export type Guess = { allowed: true; wasRight(): void } | { allowed: false; waitMs: number }

/** The wait after so many wrong guesses, in milliseconds; 0 while they are free. */
export function waitAfter(wrong: number, pace: Pace): number {
  if (wrong < pace.free) return 0
  return Math.min(pace.longestWaitMs, pace.firstWaitMs * 2 ** (wrong - pace.free))
}

type Row = { count: number; lastAt: number }

/**
 * Asks leave to guess, and counts the guess as wrong against all targets at once, before anything is compared: so
 * many guesses sent at the same moment don't all slip through. Call `wasRight` when it was right, and it counts no
 * more. While one target waits, the guess is refused and not counted, so that knocking prolongs nothing.
 *
 * @param now milliseconds since 1970
 */
export function takeGuess(database: Database, targets: Target[], now: number): Guess {
  return database
    .transaction((): Guess => {
      const before = targets.map((target) => ({
        key: keyOf(target),
        of: target.of,
        row: readRow(database, target, now),
      }))
      const waitMs = Math.max(
        0,
        ...before.map(({ of, row }) => row.lastAt + waitAfter(row.count, paces[of]) - now),
      )
      if (waitMs > 0) return { allowed: false, waitMs }
      for (const { key, row } of before) writeRow(database, key, { count: row.count + 1, lastAt: now })
      database.prepare('DELETE FROM "WrongGuesses" WHERE "lastAt" < ?').run(now - forgottenAfterMs)
      return { allowed: true, wasRight: () => forgive(database, before, now) }
    })
    .immediate()
}

/** Wipes the slate of one target, e.g. of an account whose password was set anew. */
export function forgetGuesses(database: Database, target: Target): void {
  database.prepare('DELETE FROM "WrongGuesses" WHERE "key" = ?').run(keyOf(target))
}

// A right guess forgives the slips made at the same account from the same place. Elsewhere it takes back its own
// count only: somebody with an account of their own must not win fresh guesses at others by signing in.
function forgive(
  database: Database,
  before: { key: string; of: Target['of']; row: Row }[],
  now: number,
): void {
  const forget = database.prepare('DELETE FROM "WrongGuesses" WHERE "key" = ?')
  const takeBack = database.prepare(
    `UPDATE "WrongGuesses" SET "count" = max("count" - 1, 0),
       "lastAt" = CASE WHEN "lastAt" = ? THEN ? ELSE "lastAt" END WHERE "key" = ?`,
  )
  database
    .transaction(() => {
      for (const { key, of, row } of before) {
        if (of === 'account at address' || of === 'account on device') forget.run(key)
        else takeBack.run(now, row.lastAt, key)
      }
    })
    .immediate()
}

function readRow(database: Database, target: Target, now: number): Row {
  const read = database.prepare<[string], Row>('SELECT "count", "lastAt" FROM "WrongGuesses" WHERE "key" = ?')
  const row = read.get(keyOf(target))
  return row && now - row.lastAt < forgottenAfterMs ? row : { count: 0, lastAt: 0 }
}

function writeRow(database: Database, key: string, row: Row): void {
  database
    .prepare(
      `INSERT INTO "WrongGuesses" ("key", "count", "lastAt") VALUES (?, ?, ?)
       ON CONFLICT ("key") DO UPDATE SET "count" = excluded."count", "lastAt" = excluded."lastAt"`,
    )
    .run(key, row.count, row.lastAt)
}

const keyOf = ({ of, which }: Target): string =>
  createHash('sha256')
    .update(JSON.stringify([of, ...which]))
    .digest('base64url')
