import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rankCauses } from '@/lib/core/diagnosis'
import { anyDiagnosis } from './anyDiagnosis'
import { plainPosterior } from './plainModel'

const odds = (probability: number) => probability / (1 - probability)

describe('forIt and againstIt', () => {
  test('bits are by how much the finding moves the odds: ranking again without it shows the same', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        // Weights held fixed, because leaving a finding out would also move the neighbours.
        const settings = { ...asked.settings, neighbours: Infinity, replicates: 0 }
        const all = plainPosterior({ ...asked, settings })
        for (const { cause, forIt, againstIt } of rankCauses({ ...asked, settings })) {
          for (const { finding, bits } of [...forIt, ...againstIt]) {
            const { [finding]: _, ...others } = asked.observed
            const without = plainPosterior({ ...asked, observed: others, settings })
            const moved = Math.log2(odds(all.get(cause)!)) - Math.log2(odds(without.get(cause)!))
            expect(bits).toBeCloseTo(moved, 6)
          }
        }
      }),
      { seed: 20260305, numRuns: 150 },
    )
  })

  test('the strongest come first, and no finding is on both sides', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        for (const { forIt, againstIt } of rankCauses(asked)) {
          const bits = [...forIt, ...againstIt.toReversed()].map((one) => one.bits)
          expect(bits).toEqual(bits.toSorted((a, b) => b - a))
          expect(forIt.every((one) => one.bits > 0) && againstIt.every((one) => one.bits < 0)).toBe(true)
          const named = [...forIt, ...againstIt].map((one) => one.finding)
          expect(new Set(named).size).toBe(named.length)
        }
      }),
      { seed: 20260306, numRuns: 100 },
    )
  })

  test('a finding nine times likelier under this cause than under the only other tells log2 9 bits', () => {
    const drip = { id: 'drip', values: ['seen', 'ruled out'] }
    const catalogue = {
      causes: [
        { id: 'a', prior: 1, likelihoods: { drip: { seen: 0.9, 'ruled out': 0.1 } } },
        { id: 'b', prior: 1, likelihoods: { drip: { seen: 0.1, 'ruled out': 0.9 } } },
      ],
      findings: [drip, { id: 'idle', values: ['seen', 'ruled out'] }],
    }
    const [a, b] = rankCauses({
      catalogue,
      cases: [],
      observed: { drip: 'seen', idle: 'seen' },
      settings: { unlistedPrior: 0 },
    })
    expect(a!.forIt).toEqual([{ finding: 'drip', value: 'seen', bits: expect.closeTo(Math.log2(9), 12) }])
    expect(b!.againstIt).toEqual([
      { finding: 'drip', value: 'seen', bits: expect.closeTo(-Math.log2(9), 12) },
    ])
  })
})
