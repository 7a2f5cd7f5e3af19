import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { toPascals } from '@/lib/core/pressure'
import { type RatingReport, type RatingSettings, startCounts, weighReports } from '@/lib/core/rating'
import type { SourceKind } from '@/lib/core/vocabulary'

// The published source here is Bayes' theorem itself. The posterior is worked again by listing every hypothesis, one
// a plausible label value, in whole hundredths of an inch and by plain multiplication: no logs, no pascals, no shared
// code. Reliabilities and slip shares are common practice, no published source; M is what the settings say.

type Said = { hundredths: number; coarse: boolean; source: SourceKind; readBack: boolean; photo: boolean }

const sources: SourceKind[] = [
  'factory switch label',
  'data plate',
  'current literature',
  'older literature',
  'factory support',
  'distributor',
]

/** Values with neighbours, tenths and ten times among them; coarse ones are tenths of an inch. */
const said: fc.Arbitrary<Said> = fc.record({
  hundredths: fc.constantFrom(6, 55, 60, 64, 65, 66, 70, 75, 600, 650, 700),
  coarse: fc.boolean(),
  source: fc.constantFrom(...sources),
  readBack: fc.boolean(),
  photo: fc.boolean(),
})

const written = ({ hundredths, coarse }: Said): string =>
  coarse ? (Math.floor((hundredths + 5) / 10) / 10).toFixed(1) : (hundredths / 100).toFixed(2)

const reportOf = (one: Said, at: number): RatingReport => ({
  id: `r${at}`,
  positionKey: 'p',
  action: 'closes',
  limit: 'nominal',
  pascals: toPascals(Number(written(one)), 'inH2O'),
  sense: 'suction',
  decimals: one.coarse ? 1 : 2,
  unit: 'inH2O',
  asWritten: written(one),
  kind: 'one-port',
  between: 'port and room',
  tap: 'inducer inlet',
  stage: 'single stage',
  source: one.source,
  readBack: one.readBack,
  proof: one.photo ? 'photo' : undefined,
  saidAt: '2026-01-01',
  saidBy: 'a person',
})

/** How many out of a hundred each source gets right. Common practice, no published source. */
const outOfHundred = ({ source, readBack, photo }: Said): number => {
  switch (source) {
    case 'factory switch label':
      return photo ? 97 : 92
    case 'data plate':
      return 95
    case 'current literature':
      return 96
    case 'older literature':
      return 88
    case 'factory support':
      return readBack ? 96 : 75
    default:
      return readBack ? 90 : 75
  }
}

type Interval = { value: number; from: number; below: number }

/** What rounds to a report, in hundredths, halves going up: to its own hundredth, or to its tenth. */
const intervalOf = ({ hundredths, coarse }: Said): Interval => {
  if (!coarse) return { value: hundredths, from: hundredths - 0.5, below: hundredths + 0.5 }
  const tenth = Math.floor((hundredths + 5) / 10) * 10
  return { value: tenth, from: tenth - 5, below: tenth + 5 }
}

const holds = (interval: Interval, value: number) =>
  value >= interval.from - 1e-9 && value < interval.below - 1e-9

/** Every hypothesis written out: the candidates, and the rest of the M values, each by itself. */
function enumerated(reports: Said[], known: number[], plausibleValues: number): Map<number, number> {
  const intervals = reports.map(intervalOf)
  const candidates = new Set(reports.filter(({ coarse }) => !coarse).map(({ hundredths }) => hundredths))
  for (const interval of intervals)
    if (![...candidates].some((value) => holds(interval, value))) candidates.add(interval.value)

  const weights = reports.map(({ source }) => {
    const n = reports.filter((other) => other.source === source).length
    return (n + 1) / (2 * n)
  })
  const slip = (truth: number, interval: Interval): number => {
    let probability = 0.4 / (plausibleValues - 1)
    for (const target of [truth * 10, truth / 10]) if (holds(interval, target)) probability += 0.35 / 2
    const others = [...new Set(known)].filter((value) => value !== truth)
    if (others.length === 0) probability += 0.25 / (plausibleValues - 1)
    for (const target of others) if (holds(interval, target)) probability += 0.25 / others.length
    return probability
  }
  const likelihoodOf = (truth: number | 'a value nobody reported') =>
    reports.reduce((product, report, at) => {
      const interval = intervals[at]!
      const r = outOfHundred(report) / 100
      if (truth === 'a value nobody reported')
        return product * ((1 - r) / (plausibleValues - 1)) ** weights[at]!
      const supported = [...candidates].filter((value) => holds(interval, value))
      const likelihood = supported.includes(truth) ? r / supported.length : (1 - r) * slip(truth, interval)
      return product * likelihood ** weights[at]!
    }, 1)

  const prior = (value: number) => (value >= 10 && value <= 300 ? 1 : 1 / 20) / plausibleValues
  const joint = new Map([...candidates].map((value) => [value, prior(value) * likelihoodOf(value)]))
  let total = [...joint.values()].reduce((sum, value) => sum + value, 0)
  const unreported = Math.max(1, plausibleValues - candidates.size)
  for (let value = 0; value < unreported; value++)
    total += likelihoodOf('a value nobody reported') / plausibleValues
  return new Map([...joint].map(([value, probability]) => [value, probability / total]))
}

const inHundredths = (pascals: number): number => Math.round((pascals / 249.08891) * 100)

describe('the posterior of a rating', () => {
  test('equals the enumeration of every hypothesis, for any reports, known values and number of values', () => {
    fc.assert(
      fc.property(
        fc.array(said, { minLength: 1, maxLength: 7 }),
        fc.array(fc.constantFrom(55, 60, 65, 80, 600), { maxLength: 3 }),
        fc.constantFrom(8, 12, 40, 97),
        (reports, known, plausibleValues) => {
          const settings: RatingSettings = { now: '2026-01-12', plausibleValues }
          const standing = weighReports(reports.map(reportOf), settings, {
            otherAction: known.slice(0, 1).map((value) => toPascals(value / 100, 'inH2O')),
            sister: known.slice(1).map((value) => toPascals(value / 100, 'inH2O')),
          })
          const reference = enumerated(reports, known, plausibleValues)
          const all = [standing, ...standing.rivals]
          expect(all.map(({ pascals }) => inHundredths(pascals!)).sort()).toEqual(
            [...reference.keys()].sort(),
          )
          for (const { pascals, probability } of all)
            expect(probability).toBeCloseTo(reference.get(inHundredths(pascals!))!, 10)
          expect(standing.probability).toBeCloseTo(Math.max(...reference.values()), 10)
        },
      ),
      { seed: 20260112, numRuns: 400 },
    )
  })

  test('adds the weight of evidence in log odds: each agreeing source of another kind adds ln(r (M − 1)/(1 − r))', () => {
    // Weight of evidence: I. J. Good, Probability and the Weighing of Evidence, 1950 (from memory).
    const kinds: [SourceKind, number][] = [
      ['data plate', 0.95],
      ['current literature', 0.96],
      ['older literature', 0.88],
      ['distributor', 0.75],
    ]
    let logOdds = -Math.log(39)
    const reports: RatingReport[] = []
    for (const [source, reliability] of kinds) {
      reports.push(
        reportOf({ hundredths: 60, coarse: false, source, readBack: false, photo: false }, reports.length),
      )
      logOdds += Math.log((reliability * 39) / (1 - reliability))
      const { probability } = weighReports(reports, { now: '2026-01-12' })
      expect(probability).toBeCloseTo(1 / (1 + Math.exp(-logOdds)), 12)
    }
  })

  test('does not vanish into zero with two thousand reports', () => {
    const many = Array.from({ length: 2000 }, (_, at) =>
      reportOf(
        {
          hundredths: at % 2 === 0 ? 60 : 70,
          coarse: false,
          source: 'distributor',
          readBack: true,
          photo: false,
        },
        at,
      ),
    )
    const standing = weighReports(many, { now: '2026-01-12' })
    expect(standing.probability).toBeCloseTo(0.5, 9)
    expect(standing.rivals[0]?.probability).toBeCloseTo(0.5, 9)
  }, 20_000)

  test('starts every source at the counts that were agreed, out of a hundred', () => {
    for (const { right, wrong } of Object.values(startCounts)) expect(right + wrong).toBe(100)
    expect(Object.fromEntries(Object.entries(startCounts).map(([key, { right }]) => [key, right]))).toEqual({
      'factory switch label, with photo': 97,
      'factory switch label, without photo': 92,
      'data plate': 95,
      'current literature': 96,
      'older literature': 88,
      'factory support, read back': 96,
      'factory support, not read back': 75,
      'distributor, read back': 90,
      'distributor, not read back': 75,
      'bench check': 85,
      'unknown switch label': 60,
      'parts listing': 60,
      remembered: 50,
      imported: 50,
    })
  })
})
