import { randomUUID } from 'node:crypto'
import type { Database } from 'better-sqlite3'
import { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import { addressOf } from '../http/address'
import { addPerson } from './changes'
import { takeGuess } from './guesses'
import { closeLink, makeLink, readLink } from './links'
import { nameField } from './names'
import { hashPassword, passwordField } from './passwords'
import { sayWait } from './sayWait'
import { thenSignIn } from './signIn'
import { store } from './store'

export const setUpForm = z.object({
  code: z
    .string('Type the code from the terminal.')
    .min(1, 'Type the code from the terminal.')
    .max(100, 'That is longer than the code from the terminal.'),
  name: nameField,
  password: passwordField,
})

/** Whether nobody was ever added: only then may the first manager be set up. People are never deleted. */
export function isSetUpOpen(database: Database): boolean {
  return database.prepare('SELECT 1 FROM "Person" LIMIT 1').get() === undefined
}

/**
 * A fresh set-up code for the server's terminal, undefined once there are people. Only who can read the terminal can
 * claim a new server. The code of an earlier start works no more.
 */
export function makeSetUpCode(database: Database, now: Date): string | undefined {
  return isSetUpOpen(database) ? makeLink(database, { purpose: 'set-up' }, undefined, now).secret : undefined
}

/** Adds the first manager, for whoever has the code, and answers their name. It works once, on a server without people. */
export async function setUp(
  database: Database,
  form: z.infer<typeof setUpForm>,
  now: Date,
): Promise<Result<{ name: string }>> {
  if (!isSetUpOpen(database)) return setUpIsOver
  const code = readLink(database, 'set-up', form.code, now)
  if (!code) return wrongCode
  const person = {
    id: randomUUID(),
    name: form.name,
    role: 'manager' as const,
    passwordHash: await hashPassword(form.password),
  }
  return database
    .transaction(() => {
      if (!isSetUpOpen(database)) return setUpIsOver
      if (!closeLink(database, code.id, now)) return wrongCode
      const added = addPerson(database, person, { kind: 'first manager set up' }, now)
      return added.ok ? success({ name: form.name }) : added
    })
    .immediate()
}

/** Counts the code as a guess, sets up the first manager and signs them in. */
export async function answerSetUp(request: Request, form: z.infer<typeof setUpForm>): Promise<Response> {
  const { database } = store()
  const guess = takeGuess(
    database,
    [
      { of: 'set-up', which: [] },
      { of: 'address', which: [addressOf(request)] },
    ],
    Date.now(),
  )
  if (!guess.allowed) return sayWait(guess.waitMs)
  const done = await setUp(database, form, new Date())
  if (done.ok) guess.wasRight()
  return thenSignIn(request, done, form.password)
}

const setUpIsOver = failure(
  'set-up-is-over',
  'This server is set up already. Sign in, or ask a manager for an invitation.',
)
const wrongCode = failure(
  'wrong-code',
  'That is not the code of this start. Type the one that the terminal printed last; it holds for 24 hours.',
)
