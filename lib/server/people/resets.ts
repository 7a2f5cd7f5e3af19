import type { Database } from 'better-sqlite3'
import { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import { isProgram, setPassword } from './changes'
import { writeEvent } from './events'
import { forgetGuesses } from './guesses'
import { closeLink, type MadeLink, makeLink, readLink, tokenField } from './links'
import { foldName } from './names'
import { hashPassword, passwordField } from './passwords'

const nobodyChosen = 'Choose the person who needs a new password.'
export const resetForm = z.object({
  personId: z.string(nobodyChosen).min(1, nobodyChosen).max(64, nobodyChosen),
})
export const resetUseForm = z.object({ token: tokenField, password: passwordField })

/** Makes the link that lets an active person set a new password, once, within a day. */
export function makeReset(
  database: Database,
  personId: string,
  by: string | undefined,
  now: Date,
): Result<MadeLink> {
  return database
    .transaction(() => {
      if (!activeName(database, personId)) return nobodyToReset
      if (isProgram(database, personId)) return noPasswordOfItsOwn
      writeEvent(database, { kind: 'reset link made', personId, byId: by }, now)
      return success(makeLink(database, { purpose: 'reset', personId }, by, now))
    })
    .immediate()
}

/** Sets the new password and ends all sessions. Answers the person's name, for the next sign-in. */
export async function resetPassword(
  database: Database,
  form: z.infer<typeof resetUseForm>,
  now: Date,
): Promise<Result<{ name: string }>> {
  const link = readLink(database, 'reset', form.token, now)
  if (link?.purpose !== 'reset') return deadReset
  const passwordHash = await hashPassword(form.password)
  return database
    .transaction(() => {
      const name = activeName(database, link.personId)
      if (!name || !closeLink(database, link.id, now)) return deadReset
      const event = { kind: 'password set by link' as const, byId: link.madeBy }
      const set = setPassword(database, link.personId, passwordHash, event, now)
      forgetGuesses(database, { of: 'account', which: [foldName(name)] })
      return set.ok ? success({ name }) : set
    })
    .immediate()
}

const activeName = (database: Database, id: string): string | undefined =>
  database
    .prepare<[string], { name: string }>('SELECT "name" FROM "Person" WHERE "id" = ? AND "active"')
    .get(id)?.name

const noPasswordOfItsOwn = failure(
  'a-program',
  'An office program has no password. Make a new token for it under Tokens.',
)
const nobodyToReset = failure('no-such-person', 'There is nobody active with that id. Load the list again.')
const deadReset = failure(
  'dead-link',
  'This link was used, replaced, or is over a day old. Ask a manager for a new one.',
)
