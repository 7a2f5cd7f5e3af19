import { z } from 'zod'
import { addressOf } from '../http/address'
import { refuse } from '../http/answers'
import { setPassword } from './changes'
import { takeGuess } from './guesses'
import { foldName } from './names'
import { hashPassword, isPasswordOf, longestPassword, passwordField } from './passwords'
import { sayWait } from './sayWait'
import type { Person } from './session'
import { thenSignIn } from './signIn'
import { store } from './store'

export const passwordChangeForm = z.object({
  current: z
    .string('Type your password of now.')
    .min(1, 'Type your password of now.')
    .max(longestPassword, 'That password is too long.'),
  password: passwordField,
})

/**
 * Changes a person's own password, ends all their sessions and signs this browser in anew. The old password is asked
 * for, because the browser may be somebody else's just now, and counts as a guess like any other.
 */
export async function answerPasswordChange(
  request: Request,
  person: Person,
  { current, password }: z.infer<typeof passwordChangeForm>,
): Promise<Response> {
  const { database } = store()
  const target = { of: 'account at address' as const, which: [foldName(person.name), addressOf(request)] }
  const guess = takeGuess(database, [target], Date.now())
  if (!guess.allowed) return sayWait(guess.waitMs)
  const stored = database
    .prepare<[string], { password: string }>(`SELECT "password" FROM "Account" WHERE "personId" = ?`)
    .get(person.id)
  if (!stored || !(await isPasswordOf(stored.password, current))) {
    return refuse(403, 'wrong-password', 'That is not your password of now. Nothing was changed.')
  }
  guess.wasRight()
  const event = { kind: 'password changed' as const, byId: person.id }
  const set = setPassword(database, person.id, await hashPassword(password), event, new Date())
  return thenSignIn(request, set.ok ? { ok: true, value: { name: person.name } } : set, password)
}
