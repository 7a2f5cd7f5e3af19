import fc from 'fast-check'
import { expect, test } from 'vitest'
import { makeLimiter } from '@/lib/server/api/pace'

test('makeLimiter(pace) lets so many in at once, then says how long to wait, and after that wait lets one in', () => {
  const limiter = makeLimiter({ atOnce: 3, perSecond: 2 })
  expect([1, 2, 3].map(() => limiter.take('a', 1000))).toEqual([0, 0, 0])
  expect(limiter.take('a', 1000)).toBe(500)
  expect(limiter.take('b', 1000)).toBe(0)
  expect(limiter.take('a', 1499)).toBeGreaterThan(0)
  expect(limiter.take('a', 1500)).toBe(0)
  expect(limiter.take('a', 1500)).toBeGreaterThan(0)
})

test('in no stretch of time are more let in than at once and by the second, and knocking prolongs nothing', () => {
  const pace = { atOnce: 5, perSecond: 2 }
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 120 }), (gaps) => {
      const limiter = makeLimiter(pace)
      const times: number[] = []
      let at = 0
      for (const gap of gaps) {
        at += gap
        if (limiter.take('key', at) === 0) times.push(at)
      }
      for (const [first, from] of times.entries())
        for (const [last, to] of times.entries()) {
          if (last < first) continue
          const most = pace.atOnce + (pace.perSecond * (to - from)) / 1000
          expect(last - first + 1).toBeLessThanOrEqual(most + 1e-6)
        }
      // Whoever waits as long as was said is let in, however often others knocked meanwhile.
      const wait = limiter.take('key', at)
      if (wait > 0) expect(limiter.take('key', at + wait + 1)).toBe(0)
    }),
  )
})
