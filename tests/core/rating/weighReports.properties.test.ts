import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type PressureUnit, toPascals } from '@/lib/core/pressure'
import { type RatingReport, weighReports } from '@/lib/core/rating'
import { limitKinds, type SourceKind, sourceKinds } from '@/lib/core/vocabulary'
import { reportOf, settings } from './reports'

const numbers: [string, PressureUnit][] = [
  ['0.60', 'inH2O'],
  ['0.65', 'inH2O'],
  ['0.6', 'inH2O'],
  ['0.7', 'inH2O'],
  ['0.70', 'inH2O'],
  ['0.75', 'inH2O'],
  ['0.06', 'inH2O'],
  ['6.0', 'inH2O'],
  ['60', 'inH2O'],
  ['0.601', 'inH2O'],
  ['149', 'Pa'],
  ['150', 'Pa'],
  ['1.5', 'mbar'],
  ['15.2', 'mmH2O'],
]

const leadSources: SourceKind[] = [
  'bench check',
  'unknown switch label',
  'parts listing',
  'remembered',
  'imported',
]
const isLead = ({ source, partClass }: RatingReport) =>
  leadSources.includes(source) || (source === 'factory switch label' && partClass === 'not known')

const report: fc.Arbitrary<RatingReport> = fc
  .record({
    number: fc.constantFrom(...numbers),
    limit: fc.constantFrom('nominal' as const, 'nominal' as const, ...limitKinds),
    plusMinus: fc.constantFrom(undefined, 0.05, 0.1),
    source: fc.constantFrom(...sourceKinds),
    readBack: fc.constantFrom(undefined, true, false),
    proof: fc.constantFrom(undefined, 'photo' as const, 'document' as const, 'call reference' as const),
    secondPerson: fc.constantFrom(undefined, true),
    origin: fc.constantFrom(undefined, undefined, 'call of Tuesday', 'page 12'),
    furnaceId: fc.constantFrom(undefined, 'furnace-1', 'furnace-2'),
    partClass: fc.constantFrom(undefined, 'factory' as const, 'not known' as const),
  })
  .map(({ number: [written, unit], plusMinus, ...parts }) =>
    reportOf(written, {
      unit,
      ...parts,
      ...(plusMinus === undefined
        ? {}
        : { toleranceAbove: plusMinus * 249.08891, toleranceBelow: plusMinus * 249.08891 }),
    }),
  )

const reports = fc.array(report, { maxLength: 8 })
const known = fc.record({
  otherAction: fc.array(fc.constantFrom(137, 149.453346, 174.362237), { maxLength: 2 }),
  sister: fc.array(fc.constantFrom(99.635564, 149.453346), { maxLength: 2 }),
})

const runs = { seed: 20260112, numRuns: 300 }

describe('weighReports, for any reports', () => {
  test('the order of the reports does not matter, and nothing given is changed', () => {
    fc.assert(
      fc.property(
        reports.chain((some) =>
          fc.tuple(
            fc.constant(some),
            fc.shuffledSubarray(some, { minLength: some.length, maxLength: some.length }),
          ),
        ),
        known,
        ([some, shuffled], values) => {
          const frozen = Object.freeze([...shuffled])
          expect(weighReports(frozen, settings, values)).toEqual(weighReports(some, settings, values))
        },
      ),
      runs,
    )
  })

  test('every probability lies within 0 and 1, and together they are no more than 1', () => {
    fc.assert(
      fc.property(reports, known, (some, values) => {
        const standing = weighReports(some, settings, values)
        const all = [standing, ...standing.rivals].map(({ probability }) => probability)
        for (const probability of all) expect(probability >= 0 && probability <= 1).toBe(true)
        expect(all.reduce((sum, probability) => sum + probability, 0)).toBeLessThanOrEqual(1 + 1e-9)
      }),
      runs,
    )
  })

  test('one report alone, within 0.10 to 3.0 in. w.c., has exactly its reliability', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('0.10', '0.60', '2.99', '3.0'),
        fc.constantFrom(...sourceKinds.filter((source) => !leadSources.includes(source))),
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 500 }),
        (written, source, right, wrong) => {
          const counts = { right, wrong }
          const reliability = {
            'factory switch label, without photo': counts,
            'data plate': counts,
            'current literature': counts,
            'older literature': counts,
            'factory support, not read back': counts,
            'distributor, not read back': counts,
          }
          const { probability } = weighReports([reportOf(written, { source })], { ...settings, reliability })
          expect(probability).toBeCloseTo(Math.min(0.995, Math.max(0.5, right / (right + wrong))), 12)
        },
      ),
      runs,
    )
  })

  test('an agreeing independent report never lowers the probability', () => {
    fc.assert(
      fc.property(reports, known, report, (some, values, other) => {
        const before = weighReports(some, settings, values)
        fc.pre(before.level !== 'Not on file')
        const finest = some
          .filter(({ pascals, limit }) => pascals === before.pascals && limit === before.limit)
          .filter(({ source }) => source !== 'bench check')
          .sort(
            (one, two) => toPascals(10 ** -one.decimals, one.unit) - toPascals(10 ** -two.decimals, two.unit),
          )[0]!
        const agreeing: RatingReport = {
          ...finest,
          id: 'the new one',
          source: isLead(other) ? 'distributor' : other.source,
          readBack: other.readBack,
          proof: other.proof,
          secondPerson: other.secondPerson,
          partClass: 'factory',
          origin: 'an origin of its own',
          furnaceId: undefined,
        }
        const after = weighReports([...some, agreeing], settings, values)
        const now = [after, ...after.rivals].find(
          ({ pascals, limit }) => pascals === before.pascals && limit === before.limit,
        )
        expect(now?.probability).toBeGreaterThanOrEqual(before.probability - 1e-12)
      }),
      { ...runs, numRuns: 1500 },
    )
  })

  test('a withdrawn report changes nothing but its absence', () => {
    fc.assert(
      fc.property(reports, report, known, (some, withdrawn, values) => {
        const never = weighReports(some, settings, values)
        weighReports([...some, withdrawn], settings, values)
        expect(weighReports(some, settings, values)).toEqual(never)
        expect(JSON.stringify(never)).not.toContain(withdrawn.id)
      }),
      runs,
    )
  })

  test('a report read off a general-purpose switch changes nothing but the reasons', () => {
    fc.assert(
      fc.property(reports, report, known, (some, generic, values) => {
        const refused = { ...generic, partClass: 'general-purpose' as const }
        const { reasons, ...without } = weighReports(some, settings, values)
        const { reasons: more, ...withIt } = weighReports([...some, refused], settings, values)
        expect(withIt).toEqual(without)
        expect(more.length).toBe(reasons.length + 1)
      }),
      runs,
    )
  })

  test('a lead beside a better report changes nothing but the list of leads', () => {
    fc.assert(
      fc.property(reports, report, known, (some, other, values) => {
        fc.pre(some.some((each) => !isLead(each)))
        const lead = { ...other, source: 'parts listing' as const }
        const { leads, ...without } = weighReports(some, settings, values)
        const { leads: more, ...withIt } = weighReports([...some, lead], settings, values)
        expect(withIt).toEqual(without)
        expect(more.length).toBe(leads.length + 1)
      }),
      runs,
    )
  })

  test('no level is higher than its proof allows', () => {
    fc.assert(
      fc.property(reports, known, (some, values) => {
        const { level, probability, reportIds, rivals } = weighReports(some, settings, values)
        const agreeing = some.filter(({ id }) => reportIds.includes(id))
        if (level === 'Verified' || level === 'Supported') {
          expect(probability).toBeGreaterThanOrEqual(0.9 - 1e-9)
          expect(agreeing.some(({ proof }) => proof !== undefined)).toBe(true)
          expect(agreeing.some(isLead)).toBe(false)
          expect(rivals.every(({ probability: theirs }) => theirs < 0.05)).toBe(true)
        }
        if (level === 'Verified') {
          expect(probability).toBeGreaterThanOrEqual(0.99 - 1e-9)
          expect(agreeing.length).toBeGreaterThanOrEqual(2)
          expect(agreeing.some(({ source }) => source !== 'factory switch label')).toBe(true)
        }
      }),
      runs,
    )
  })
})
