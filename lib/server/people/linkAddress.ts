import type { Result } from '@/lib/core/result'
import { originOf } from '../http/origin'
import type { MadeLink } from './links'

/** The pages that one-time links lead to: /join takes an invitation, /reset a new password. */
type Page = 'join' | 'reset'

/**
 * The whole address of a one-time link. The secret stands behind the #, which browsers keep to themselves: it gets
 * into no log on its way.
 *
 * @example addressOfLink('https://inchwater.example', 'join', 'secret') // 'https://inchwater.example/join#secret'
 */
export const addressOfLink = (origin: string, page: Page, secret: string): string =>
  `${origin}/${page}#${secret}`

/** A made link as it is shown to the manager, once. */
export function linkOf(
  request: Request,
  page: Page,
  made: Result<MadeLink>,
): Result<{ link: string; expiresAt: string }> {
  if (!made.ok) return made
  const { secret, expiresAt } = made.value
  return { ok: true, value: { link: addressOfLink(originOf(request), page, secret), expiresAt } }
}
