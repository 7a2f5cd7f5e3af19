import { z } from 'zod'

/**
 * A person's name as typed: what everybody sees, and what signs in. Letters, marks, digits, spaces and the few
 * signs that names carry; 2 to 60 characters once the spaces are put in order.
 */
export const nameField = z
  .string('Type a name.')
  .transform((typed) => typed.normalize('NFKC').trim().replace(/\s+/gu, ' '))
  .pipe(
    z
      .string()
      .min(2, 'A name has at least 2 characters.')
      .max(60, 'A name has at most 60 characters.')
      .regex(
        /^[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N} .,'’()-]*$/u,
        "A name has letters, digits, spaces and . , ' ( ) - only.",
      ),
  )

/** The most characters that a folded name may have; the sign-in library must be told the same. */
export const longestSignInName = 200

/**
 * Folds a name the way sign-in compares it: compatibility characters made plain (Unicode NFKC), lower case, single
 * spaces, typographic apostrophe as the plain one.
 *
 * @example foldName('  Mara  O’Tell ') // "mara o'tell"
 */
export function foldName(typed: string): string {
  return typed.normalize('NFKC').toLowerCase().trim().replace(/\s+/gu, ' ').replaceAll('’', "'")
}
