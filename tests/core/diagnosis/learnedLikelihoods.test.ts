import fc from 'fast-check'
import { expect, test } from 'vitest'
import { learnedLikelihoods, type PastCase, rankCauses, unlistedCause } from '@/lib/core/diagnosis'
import { anyDiagnosis } from './anyDiagnosis'

const drip = { id: 'drip', values: ['seen', 'ruled out'] }
const catalogue = {
  causes: [
    { id: 'blocked', prior: 3, likelihoods: { drip: { seen: 0.8, 'ruled out': 0.2 } } },
    { id: 'worn', prior: 1, likelihoods: { drip: { seen: 0.2, 'ruled out': 0.8 } } },
  ],
  findings: [drip, { id: 'visitor', values: ['seen', 'ruled out'], carries: 'context only' as const }],
}

test('without a case gives the trade’s chances, pooled by the base rates outside the list, and no context', () => {
  const table = learnedLikelihoods({ catalogue, cases: [], observed: {} })
  expect(table.blocked).toEqual({ drip: { seen: 0.8, 'ruled out': 0.2 } })
  expect(table.worn).toEqual({ drip: { seen: 0.2, 'ruled out': 0.8 } })
  expect(table[unlistedCause]!.drip!.seen).toBeCloseTo(0.75 * 0.8 + 0.25 * 0.2, 12)
})

test('adds cases to m pseudo-counts: (4 · 0.2 + 2) / (4 + 2) = 2.8 / 6', () => {
  const cases: PastCase[] = ['a', 'b'].map((id) => ({
    id,
    findings: { drip: 'seen' },
    cause: { main: 'worn', status: 'confirmed' },
  }))
  const table = learnedLikelihoods({ catalogue, cases, observed: {} })
  expect(table.worn!.drip!.seen).toBeCloseTo(2.8 / 6, 12)
})

test('holds the chances with which rankCauses weighs, and they add up to 1 under every cause', () => {
  fc.assert(
    fc.property(anyDiagnosis, (asked) => {
      // Only the weights depend on what is observed; with all alike, one table serves every observation.
      const settings = { ...asked.settings, neighbours: Infinity, replicates: 0 }
      const table = learnedLikelihoods({ ...asked, observed: {}, settings })
      for (const findings of Object.values(table)) {
        for (const chances of Object.values(findings)) {
          expect(Object.values(chances).reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12)
        }
      }
      const before = rankCauses({ ...asked, observed: {}, settings })
      const scores = before.map(({ cause, probability }) =>
        asked.catalogue.findings.reduce((score, { id, carries }) => {
          const value = asked.observed[id]
          if (carries === 'context only' || value === undefined || value === 'not checked') return score
          return score * table[cause]![id]![value]!
        }, probability),
      )
      const sum = scores.reduce((total, score) => total + score, 0)
      const after = new Map(rankCauses({ ...asked, settings }).map((one) => [one.cause, one.probability]))
      before.forEach(({ cause }, place) => {
        expect(after.get(cause)).toBeCloseTo(scores[place]! / sum, 11)
      })
    }),
    { seed: 20260312, numRuns: 150 },
  )
})
