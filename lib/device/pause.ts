/** How often an open screen asks for news and sends what waits, in milliseconds, also where nothing can tell it. */
const usualMs = 30_000

/** The longest pause after failures, in milliseconds. */
const mostMs = 10 * 60_000

/**
 * How long an open screen waits before it tries again by itself, in milliseconds. After each failure in a row twice as
 * long, and spread by chance, so that a server that comes back is not met by everybody at once. (Exponential backoff
 * with jitter: common practice.) A signal that comes back, a page that comes in sight and a record that is added do not
 * wait for it.
 *
 * @param failures how many tries in a row have failed
 * @param chance a number in [0, 1)
 * @example pauseMs(0, 0.5)   // 30 000
 * @throws RangeError unless failures is a whole number from 0
 */
export function pauseMs(failures: number, chance: number): number {
  if (!Number.isSafeInteger(failures) || failures < 0) throw new RangeError('pauseMs requires failures ≥ 0')
  if (failures === 0) return usualMs
  const longest = Math.min(usualMs * 2 ** failures, mostMs)
  return longest * (0.5 + chance / 2)
}
