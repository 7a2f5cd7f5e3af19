import { describe, expect, test } from 'vitest'
import { diagnosisCatalogue } from '@/lib/catalogue/diagnosisCatalogue'
import { replayHelper } from '@/lib/core/diagnosis'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { replayCases } from '@/lib/records/view/case/pastCases'
import { demoSeed } from '@/seed-demo/company'
import { companyOf } from './companies'

// The truth behind the demo's cases takes nothing from the catalogue (seed-demo/cases), so these are no foregone conclusions.

const recordOf = (seed: number) => {
  const cases = replayCases(foldTeamFile(companyOf(seed).records))
  const record = replayHelper({ catalogue: diagnosisCatalogue, cases })
  if (!record.ok) throw new Error(record.problem.message)
  return record.value
}

describe.each([demoSeed, 1])('on the replayed later winters, with seed %i', (seed) => {
  const { helper, baseRates, checklist, winters } = recordOf(seed)

  test('three winters and the start of a fourth are scored, on more than a hundred proven cases', () => {
    expect(winters.map(({ winter }) => winter)).toEqual([2023, 2024, 2025, 2026])
    expect(helper.cases).toBeGreaterThan(100)
  })

  test.each([
    ['the base rates', baseRates],
    ['the fixed checklist', checklist],
  ])('the helper beats %s in log loss and in the first three, both beyond chance', (_, other) => {
    const gain = other.logLoss - helper.logLoss
    expect(gain).toBeGreaterThan(3 * Math.hypot(other.logLossStandardError, helper.logLossStandardError))
    expect(helper.top3.interval95[0]).toBeGreaterThan(other.top3.interval95[1])
  })

  test('its chances can be taken at their word: no tenth is farther off than chance could make it', () => {
    // Beyond z = 4 of the binomial with the mean forecast; of ten tenths none should be.
    for (const { cases, forecast, came } of helper.reliability) {
      const spread = Math.sqrt((forecast * (1 - forecast)) / cases)
      expect(Math.abs(came.rate - forecast)).toBeLessThan(4 * spread)
    }
  })
})
