import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  beforeEntering,
  dangerFindingIds,
  dangerIn,
  everybodyOutIds,
  leaveOffIds,
  noPermission,
} from '@/lib/core/guard'
import { compared, frozen, limit, rating, reading } from '../reading/made'

const codes = (...given: Parameters<typeof dangerIn>) => dangerIn(...given).map((danger) => danger.code)

describe('dangerIn(findings, readings)', () => {
  test.each(everybodyOutIds.map((id) => [id]))(
    '%s: everybody out, no electrical switch, this phone away',
    (id) => {
      const [danger] = dangerIn([id], {})
      expect(danger?.urgency).toBe('everybody out')
      expect(danger?.steps.slice(0, 4)).toEqual([
        'Everybody out now.',
        'Operate no electrical switch.',
        'Put this phone away.',
        'From outside, call the emergency number and the gas supplier.',
      ])
    },
  )

  test.each(leaveOffIds.map((id) => [id]))(
    '%s: gas and power off if that is safe, leave off, tag, tell',
    (id) => {
      const [danger] = dangerIn([id], {})
      expect(danger?.urgency).toBe('stop and leave off')
      expect(danger?.steps.slice(0, 4)).toEqual([
        'Gas and power off, if that is safe.',
        'Leave it off.',
        'Tag it.',
        'Tell the occupant, and whoever local rules name.',
      ])
    },
  )

  test('every danger defers to the maker, local codes and a licensed person', () => {
    for (const danger of dangerIn(dangerFindingIds, {})) {
      expect(danger.defers).toContain('maker’s instructions, local codes and a licensed person')
      // It is no step: whoever follows the numbers does something at each of them.
      expect(danger.steps.join(' ')).not.toContain('maker’s instructions')
    }
  })

  test('the gravest come first, each once, and a finding that is no danger is passed over', () => {
    expect(codes(frozen(['spillage', 'hose-off', 'smell-of-gas', 'spillage']), {})).toEqual([
      'smell-of-gas',
      'spillage',
    ])
  })

  test('every danger of the rule has an id', () => {
    expect(dangerFindingIds).toHaveLength(19)
    expect(new Set(dangerFindingIds).size).toBe(19)
  })

  test('room CO above the employer’s limit is everybody out; the limit is the employer’s own', () => {
    expect(codes([], { roomCo: { ppm: 10, employersLimitPpm: 9 } })).toEqual(['room-co-above-limit'])
    expect(codes([], { roomCo: { ppm: 10, employersLimitPpm: 35 } })).toEqual([])
    expect(codes([], { roomCo: { ppm: 1, employersLimitPpm: 0 } })).toEqual(['room-co-above-limit'])
  })

  // 100 ppm: guideline bands in public protocols say to leave the building from there (secondary text only).
  test('room CO of 100 ppm is everybody out, whatever limit was typed; less is no permission', () => {
    const codesAt = (ppm: number) => codes([], { roomCo: { ppm, employersLimitPpm: 5000 } })
    for (const ppm of [100, 800, 5001]) expect(codesAt(ppm)).toEqual(['room-co-above-limit'])
    expect(codesAt(99.9)).toEqual([])
  })

  // One maker's manual allows flue CO up to 100 ppm; 400 ppm is the figure quoted from certification (secondary text).
  test('flue CO above the limit is a danger, and no limit lifts that above 400 ppm', () => {
    expect(codes([], { flueCo: { ppm: [101], limitPpm: 100 } })).toEqual(['flue-co-high'])
    expect(codes([], { flueCo: { ppm: [100], limitPpm: 100 } })).toEqual([])
    expect(codes([], { flueCo: { ppm: [400], limitPpm: 1000 } })).toEqual(['flue-co-high'])
  })

  test('climbing flue CO is a danger below any limit; a wobble is not climbing', () => {
    expect(codes([], { flueCo: { ppm: [20, 28, 37], limitPpm: 100 } })).toEqual(['flue-co-climbing'])
    expect(codes([], { flueCo: { ppm: [20, 22, 21], limitPpm: 100 } })).toEqual([])
    expect(codes([], { flueCo: { ppm: [40, 55], limitPpm: 100 } })).toEqual([])
  })

  test('a switch closed at rest, and one that closes below its rating, are dangers by their readings', () => {
    const atRest = compared({
      reading: reading([0], { phase: 'rest', contacts: 'closed' }),
      rating: rating({ closes: limit(0.7) }),
    })
    expect(codes([], { comparisons: [atRest] })).toEqual(['switch-closed-at-rest'])
    const early = compared({
      reading: reading([0.4], { contacts: 'closed' }),
      rating: rating({ closes: limit(0.7) }),
    })
    expect(codes([], { comparisons: [early] })).toEqual(['switch-closes-below-rating'])
  })

  test('one that opens on rise is closed at rest, and is a danger when it stays closed above its point', () => {
    const onRise = { kind: 'opens on rise', sense: 'pressure', tap: 'vent side' } as const
    const rated = rating({ ...onRise, opens: limit(1) })
    const at = (value: number, phase: 'rest' | 'pre-purge') =>
      compared({ reading: reading([value], { ...onRise, phase, contacts: 'closed' }), rating: rated })
    expect(codes([], { comparisons: [at(0, 'rest')] })).toEqual([])
    expect(codes([], { comparisons: [at(1.3, 'pre-purge')] })).toEqual([
      'switch-stays-closed-above-opening-point',
    ])
  })

  test('more evidence never takes a danger away', () => {
    fc.assert(
      fc.property(
        fc.subarray([...dangerFindingIds]),
        fc.subarray([...dangerFindingIds]),
        fc.integer({ min: 0, max: 500 }),
        (some, more, ppm) => {
          const flueCo = { ppm: [ppm], limitPpm: 100 }
          const fewer = codes(some, { flueCo })
          expect(codes([...some, ...more], { flueCo })).toEqual(expect.arrayContaining(fewer))
        },
      ),
      { seed: 5, numRuns: 100 },
    )
  })

  test('no words of any danger permit running, and silence is said to be no permission', () => {
    const said = dangerIn(dangerFindingIds, {}).flatMap((danger) => [
      danger.sentence,
      ...danger.steps,
      danger.defers,
    ])
    for (const words of said)
      expect(words).not.toMatch(/may (be )?run|safe to run|acceptable|discretion|normal|keep it running/i)
    expect(noPermission).toContain('no permission to run')
    expect(beforeEntering).toContain('switched on')
  })

  test('no band of CO is named: nothing that is said holds a figure', () => {
    for (const danger of dangerIn(dangerFindingIds, {}))
      expect([danger.sentence, ...danger.steps, danger.defers].join(' ')).not.toMatch(/\d/)
  })

  test('refuses a concentration that is negative or no number', () => {
    expect(() => dangerIn([], { roomCo: { ppm: -1, employersLimitPpm: 9 } })).toThrow(RangeError)
    expect(() => dangerIn([], { flueCo: { ppm: [Number.NaN], limitPpm: 100 } })).toThrow(RangeError)
  })
})
