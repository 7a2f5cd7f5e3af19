/** So many requests at once, and so many more with each second that passes. */
type Pace = { atOnce: number; perSecond: number }

/** Left over of a pace, at a moment in milliseconds. */
type Left = { requests: number; atMs: number }

/** How often something may happen; each key has a pace of its own. */
export type Limiter = {
  /** @returns how many milliseconds to wait; 0 when it may go on, and then it counts */
  take(key: string, nowMs: number): number
}

/**
 * A bucket that fills again by the second. What was not asked for since it was full again is forgotten.
 *
 * @example makeLimiter({ atOnce: 2, perSecond: 1 }).take('key', Date.now()) // 0
 */
export function makeLimiter({ atOnce, perSecond }: Pace): Limiter {
  const buckets = new Map<string, Left>()
  const fullAgainMs = (1000 * atOnce) / perSecond
  const filled = ({ requests, atMs }: Left, nowMs: number): number =>
    Math.min(atOnce, requests + (perSecond * Math.max(0, nowMs - atMs)) / 1000)
  return {
    take(key, nowMs) {
      for (const [each, { atMs }] of buckets) {
        // In the order of their last use: behind the first that is young enough, all are.
        if (nowMs - atMs < fullAgainMs) break
        buckets.delete(each)
      }
      const left = filled(buckets.get(key) ?? { requests: atOnce, atMs: nowMs }, nowMs)
      const allowed = left >= 1
      buckets.delete(key)
      buckets.set(key, { requests: allowed ? left - 1 : left, atMs: nowMs })
      return allowed ? 0 : Math.ceil((1000 * (1 - left)) / perSecond)
    },
  }
}
