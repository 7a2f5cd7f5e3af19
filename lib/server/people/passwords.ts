import { hash, verify } from '@node-rs/argon2'
import { z } from 'zod'

export const shortestPassword = 10
export const longestPassword = 200

/** A new password. Length is what counts; no rule asks for signs or capitals (NIST SP 800-63B, 5.1.1.2). */
export const passwordField = z
  .string('Type a password.')
  .min(
    shortestPassword,
    `A password has at least ${shortestPassword} characters. Three or four words do well.`,
  )
  .max(longestPassword, `A password has at most ${longestPassword} characters.`)
  .refine(
    (typed) => new Set(typed).size > 3,
    'That password repeats the same few characters. Choose another one.',
  )

// OWASP Password Storage Cheat Sheet, Argon2id (the library's default kind): 19 MiB of memory, 2 passes, 1 lane.
const cost = { memoryCost: 19 * 1024, timeCost: 2, parallelism: 1 }

/** An argon2id hash in the usual text form, `$argon2id$v=19$…`, salt included. */
export const hashPassword = (password: string): Promise<string> => hash(password, cost)

/** Whether the password is the one the hash was made of. */
export const isPasswordOf = (storedHash: string, password: string): Promise<boolean> =>
  verify(storedHash, password)
