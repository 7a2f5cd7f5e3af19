import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { isLocked } from '@/lib/device/contactAge'
import { inPlaceOf } from '@/lib/device/mending'
import type { OutboxItem } from '@/lib/device/outbox'
import { pauseMs } from '@/lib/device/pause'

describe('pauseMs(failures, chance)', () => {
  test('is half a minute while all is well, then twice as long after each failure, and never more than ten minutes', () => {
    expect(pauseMs(0, 0)).toBe(30_000)
    const longest = [1, 2, 3, 4, 5, 40].map((failures) => pauseMs(failures, 0.999_999_999))
    expect(longest.map((ms) => Math.round(ms / 1000))).toEqual([60, 120, 240, 480, 600, 600])
  })

  test('is spread over the upper half of that, so that devices do not come back in step', () => {
    expect([pauseMs(2, 0), pauseMs(2, 0.5)]).toEqual([60_000, 90_000])
    fc.assert(
      fc.property(
        fc.nat(2000),
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        (failures, chance) => {
          const pause = pauseMs(failures, chance)
          expect(pause).toBeGreaterThanOrEqual(30_000)
          expect(pause).toBeLessThanOrEqual(600_000)
        },
      ),
    )
  })

  test('a number of failures that is none is the caller’s mistake', () => {
    for (const wrong of [-1, 0.5, Number.NaN]) expect(() => pauseMs(wrong, 0)).toThrow(RangeError)
  })
})

describe('isLocked({ freshAt, latestAt, now })', () => {
  const at = (day: number) => new Date(Date.UTC(2026, 0, day))
  const text = (day: number) => at(day).toISOString()

  test('is never so before the first contact, nor for 45 days after the last', () => {
    expect(isLocked({ freshAt: undefined, latestAt: text(400), now: at(400) })).toBe(false)
    expect(isLocked({ freshAt: text(1), latestAt: undefined, now: at(46) })).toBe(false)
    expect(isLocked({ freshAt: text(1), latestAt: undefined, now: at(47) })).toBe(true)
  })

  test('goes by the latest time seen when the clock was set back', () => {
    expect(isLocked({ freshAt: text(1), latestAt: text(47), now: at(2) })).toBe(true)
    expect(isLocked({ freshAt: text(1), latestAt: text(20), now: at(2) })).toBe(false)
  })
})

describe('inPlaceOf(refused, records)', () => {
  const refused: OutboxItem = {
    order: 1,
    record: { id: 'old', kind: 'maker', version: 1, body: {}, saidAt: '', author: 'p', device: 'd' },
    refusal: { rule: 'r', sentence: 's' },
  }

  test('gives the refused id to the first record of its kind, and to what names that one in the same step', () => {
    const said = [
      { kind: 'part', body: { partNumber: '7' } },
      { kind: 'maker', id: 'new', body: { name: 'a' } },
      { kind: 'maker', id: 'second', body: { name: 'b' } },
      { kind: 'report', body: { makerId: 'new', all: ['new', 'x'], deep: { one: 'new' } } },
    ]
    const before = structuredClone(said)
    expect(inPlaceOf(refused, said)).toEqual([
      said[0],
      { kind: 'maker', id: 'old', body: { name: 'a' } },
      said[2],
      { kind: 'report', body: { makerId: 'old', all: ['old', 'x'], deep: { one: 'old' } } },
    ])
    expect(said).toEqual(before)
  })

  test('leaves records alone of which none is of its kind', () => {
    const said = [{ kind: 'part', id: 'p', body: {} }]
    expect(inPlaceOf(refused, said)).toEqual(said)
  })
})
