import { isAPIError } from 'better-auth/api'
import { z } from 'zod'
import type { Result } from '@/lib/core/result'
import type { Role } from '@/lib/records/envelope'
import { addressOf } from '../http/address'
import { answer, answerResult, refuse } from '../http/answers'
import { isSecure } from '../http/origin'
import { deactivated } from './auth'
import { type Target, takeGuess } from './guesses'
import { deviceCookie, knownDevice } from './knownDevice'
import { foldName, longestSignInName } from './names'
import { longestPassword } from './passwords'
import { sayWait } from './sayWait'
import { sessionSecret } from './secret'
import type { Person } from './session'
import { authFor, store } from './store'

export const signInForm = z.object({
  name: z
    .string('Type your name.')
    .min(1, 'Type your name.')
    // Folding can make one character eighteen.
    .refine((typed) => foldName(typed).length <= longestSignInName, 'That name is too long.'),
  password: z
    .string('Type your password.')
    .min(1, 'Type your password.')
    .max(longestPassword, 'That password is too long.'),
})

/**
 * Signs a browser in. A wrong password and an unknown name get the same answer after the same work, and both count
 * as wrong guesses. The answer carries the person, the session's cookie and the device's.
 */
export async function signIn(request: Request, typed: z.infer<typeof signInForm>): Promise<Response> {
  const secure = isSecure(request.headers, request.url)
  const { database, dataFolder } = store()
  const secret = sessionSecret(dataFolder)
  const signInName = foldName(typed.name)
  const device = knownDevice(request.headers, secret, signInName, secure)
  const guess = takeGuess(database, targetsOf(signInName, addressOf(request), device), Date.now())
  if (!guess.allowed) return sayWait(guess.waitMs)
  try {
    const { headers, response } = await authFor(secure).api.signInUsername({
      body: { username: signInName, password: typed.password },
      headers: new Headers({ 'user-agent': request.headers.get('user-agent') ?? '' }),
      returnHeaders: true,
    })
    guess.wasRight()
    const { id, name, role } = response.user as unknown as { id: string; name: string; role: Role }
    const signedIn = answer<Person>({ id, name, role })
    for (const cookie of headers.getSetCookie()) signedIn.headers.append('set-cookie', cookie)
    signedIn.headers.append('set-cookie', deviceCookie(secret, signInName, secure))
    return signedIn
  } catch (error) {
    if (!isAPIError(error)) throw error
    if (error.body?.code === deactivated) {
      return refuse(403, 'deactivated', 'Your sign-in was switched off. Ask a manager to switch it on again.')
    }
    if (error.statusCode === 401) {
      return refuse(
        401,
        'wrong-name-or-password',
        'The name or the password is not right. Check both and try again.',
      )
    }
    throw error
  }
}

/** Signs in whoever has just chosen a password, or answers why the choice was refused. */
export async function thenSignIn(
  request: Request,
  chosen: Result<{ name: string }>,
  password: string,
): Promise<Response> {
  return chosen.ok ? signIn(request, { name: chosen.value.name, password }) : answerResult(chosen)
}

function targetsOf(signInName: string, address: string, device: string | undefined): Target[] {
  if (device) return [{ of: 'account on device', which: [signInName, device] }]
  return [
    { of: 'account', which: [signInName] },
    { of: 'account at address', which: [signInName, address] },
    { of: 'address', which: [address] },
  ]
}
