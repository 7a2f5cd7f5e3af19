import { refuse } from '../http/answers'

/** The refusal after too many wrong guesses: how long to wait, in words and as Retry-After (RFC 9110, 10.2.3). */
export function sayWait(waitMs: number): Response {
  const seconds = Math.ceil(waitMs / 1000)
  const wait = seconds < 90 ? `${seconds} seconds` : `${Math.ceil(seconds / 60)} minutes`
  const refused = refuse(429, 'wait', `There were too many wrong tries. Try again in ${wait}.`)
  refused.headers.set('retry-after', String(seconds))
  return refused
}
