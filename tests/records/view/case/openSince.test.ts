import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DangerCode } from '@/lib/core/guard'
import { openSince, type Sighting } from '@/lib/records/view/case/openSince'

const sighting = (
  at: string,
  shows: DangerCode[],
  rulesOut: DangerCode[] = [],
  visitId = 'one',
): Sighting => ({
  at,
  visitId,
  shows,
  rulesOut,
})

describe('openSince(sightings)', () => {
  test('a danger is open since it was first found, however often it is found on that visit', () => {
    expect(openSince([sighting('1', ['spillage']), sighting('2', ['spillage'])])).toEqual(
      new Map([['spillage', '1']]),
    )
  })

  test('once it is ruled out it is gone, and found anew it is open since then', () => {
    const gone = [sighting('1', ['spillage']), sighting('2', [], ['spillage'])]
    expect(openSince(gone)).toEqual(new Map())
    expect(openSince([...gone, sighting('3', ['spillage'])])).toEqual(new Map([['spillage', '3']]))
  })

  test('found on a later visit it is open since then: what was done about it may be undone', () => {
    const twice = [sighting('1', ['spillage']), sighting('2', ['spillage'], [], 'two')]
    expect(openSince(twice)).toEqual(new Map([['spillage', '2']]))
  })

  test('of nothing, nothing is open', () => {
    expect(openSince([])).toEqual(new Map())
  })

  test('for any sightings: open is exactly what was shown after it was last ruled out', () => {
    const codes = ['spillage', 'scorching', 'flue-co-high'] as const
    const any = fc.array(
      fc.record({
        visitId: fc.constantFrom('one', 'two'),
        shows: fc.subarray([...codes]),
        rulesOut: fc.subarray([...codes]),
      }),
      { maxLength: 12 },
    )
    fc.assert(
      fc.property(any, (list) => {
        const sightings = list.map((one, place) => ({ ...one, at: String(place).padStart(2, '0') }))
        const open = openSince(Object.freeze(sightings))
        for (const code of codes) {
          const shown = sightings.findLastIndex(({ shows }) => shows.includes(code))
          const ruledOut = sightings.findLastIndex(({ rulesOut }) => rulesOut.includes(code))
          expect(open.has(code)).toBe(shown >= 0 && shown >= ruledOut)
        }
      }),
      { seed: 20260112 },
    )
  })
})
