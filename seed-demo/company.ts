import { seededRandom } from '@/lib/core/seeded'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { tellCases } from './cases'
import { drawReports } from './drawReports'
import type { CaseShowing, Showing } from './showing'
import { tellStories } from './stories'
import { openTeam } from './team'

/** The seed of the demo that ships. */
export const demoSeed = 20261120

/** How many reports the demo holds. */
const reportCount = 200

/**
 * The whole demo company as records, oldest first, and what its hand-written cases are there to show. Pure: one seed
 * gives one company, to the letter.
 *
 * @example demoCompany(demoSeed).records.length
 */
export function demoCompany(seed: number): {
  records: RecordEnvelope[]
  showings: Showing[]
  cases: CaseShowing[]
} {
  const team = openTeam(seed)
  const showings = tellStories(team)
  drawReports(team, seededRandom(seed + 1), reportCount)
  const cases = tellCases(team, seed + 2)
  return { records: team.records(), showings, cases }
}

export const demoRecords = (seed: number): RecordEnvelope[] => demoCompany(seed).records
