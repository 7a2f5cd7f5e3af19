import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { toPascals } from '@/lib/core/pressure'
import { dependsOnFurnace, type RatingReport, ratingFor } from '@/lib/core/rating'
import {
  currentPage,
  factorySupport,
  photoLabel,
  readBackDistributor,
  reportOf,
  settings,
  unreadDistributor,
} from './reports'

const inches = (value: number) => toPascals(value, 'inH2O')

/** A page that says outright which revisions, serials and elevations it is for; empty ranges mean all. */
const pageFor = (written: string, ranges: Partial<RatingReport>) =>
  currentPage(written, { revisionRange: {}, serialRange: {}, elevationBand: {}, ...ranges })

const valley = pageFor('0.60', { elevationBand: { toMetres: 1200 } })
const hills = pageFor('0.45', { elevationBand: { fromMetres: 1201, toMetres: 3000 } })

describe('ratingFor picks the bundle that the furnace falls into', () => {
  test('by elevation, both ends of a band included', () => {
    const at = (elevationMetres: number) => ratingFor([valley, hills], { elevationMetres }, settings)
    expect(at(0).closes.pascals).toBeCloseTo(inches(0.6), 9)
    expect(at(1200).closes.pascals).toBeCloseTo(inches(0.6), 9)
    expect(at(1201).closes.pascals).toBeCloseTo(inches(0.45), 9)
    expect(at(3000).closes).toMatchObject({ level: 'Supported' })
    expect(at(3001).closes).toMatchObject({ level: 'Not on file' })
    expect(at(0).asks).toEqual([])
  })

  test('by revision, in the maker’s order', () => {
    const early = pageFor('0.60', { revisionRange: { to: 'B' } })
    const late = pageFor('0.50', { revisionRange: { from: 'C' } })
    expect(ratingFor([early, late], { revision: 'b' }, settings).closes.pascals).toBeCloseTo(inches(0.6), 9)
    expect(ratingFor([early, late], { revision: 'D' }, settings).closes.pascals).toBeCloseTo(inches(0.5), 9)
    const backwards = (first: string, second: string) => (first < second ? 1 : first > second ? -1 : 0)
    const reversed = ratingFor([early, late], { revision: 'D' }, { ...settings, compareCodes: backwards })
    expect(reversed.closes.pascals).toBeCloseTo(inches(0.6), 9)
  })

  test('by serial, digits as numbers: A999 comes before A1000', () => {
    const early = pageFor('0.60', { serialRange: { from: 'A1', to: 'A999' } })
    const late = pageFor('0.50', { serialRange: { from: 'A1000' } })
    expect(ratingFor([early, late], { serial: 'A-0998' }, settings).closes.pascals).toBeCloseTo(
      inches(0.6),
      9,
    )
    expect(ratingFor([early, late], { serial: 'a 1001' }, settings).closes.pascals).toBeCloseTo(
      inches(0.5),
      9,
    )
  })

  test('a serial that cannot be ordered against the range leaves the report a lead', () => {
    const page = pageFor('0.60', { serialRange: { from: 'A1', to: 'A999' } })
    const { closes, asks } = ratingFor([page], { serial: '99-A' }, settings)
    expect(closes.level).toBe('Unverified')
    expect(closes.leads[0]?.why).toContain('cannot be told whether this furnace’s serial')
    expect(asks).toEqual([])
  })

  test('a range left unstated covers only the furnace that the report was made on', () => {
    const label = photoLabel('0.60', { furnaceId: 'f1' })
    expect(ratingFor([label], { id: 'f1' }, settings).closes.level).toBe('Supported')
    const { closes, asks } = ratingFor([label], { id: 'f2', elevationMetres: 0, revision: 'A' }, settings)
    expect(closes).toMatchObject({ level: 'Unverified', leads: [{ reportId: label.id, agrees: true }] })
    expect(asks).toEqual([])
    expect(ratingFor([label], {}, settings).closes.level).toBe('Unverified')
  })

  test('one range left unstated is enough to make a report a lead elsewhere', () => {
    const page = currentPage('0.60', { furnaceId: 'f1', revisionRange: {}, elevationBand: {} })
    expect(ratingFor([page], { id: 'f2' }, settings).closes.leads[0]?.why).toContain('which serial it covers')
    expect(ratingFor([page], { id: 'f1' }, settings).closes.level).toBe('Supported')
  })

  test('a lead for another elevation is not listed at all', () => {
    const listing = reportOf('0.60', { source: 'parts listing', elevationBand: { toMetres: 1200 } })
    const { closes } = ratingFor([listing], { elevationMetres: 2000 }, settings)
    expect(closes).toMatchObject({ level: 'Not on file', leads: [] })
    expect(closes.reasons.join(' ')).toContain('another elevation')
  })

  test('by part number, whatever the dashes, where the furnace’s is recorded', () => {
    const old = pageFor('0.60', { partNumber: 'QZ-1180' })
    const replacement = pageFor('0.50', { partNumber: 'QZ-1181' })
    const { closes, asks } = ratingFor([old, replacement], { partNumber: 'qz1181' }, settings)
    expect(closes).toMatchObject({ level: 'Supported' })
    expect(closes.pascals).toBeCloseTo(inches(0.5), 9)
    expect(asks).toEqual([])
  })

  test('reports of two part numbers that agree do not verify each other', () => {
    const reports = [
      photoLabel('0.60', { furnaceId: 'f1', partNumber: 'QZ-1180' }),
      pageFor('0.60', { partNumber: 'QZ-1181' }),
    ]
    const { closes } = ratingFor(reports, { id: 'f1' }, settings)
    expect(closes.level).toBe('Supported')
    expect(closes.reasons.join(' ')).toContain('not carried over from one part to another')
  })
})

describe('ratingFor asks only where the answer depends on it', () => {
  test('elevation, when the bands differ; nothing is relied on until it is known', () => {
    const { closes, asks } = ratingFor([valley, hills], {}, settings)
    expect(asks).toEqual(['elevation'])
    expect(closes.level).toBe('Unverified')
    expect(closes.leads.map(({ why }) => why).join(' ')).toContain('this furnace’s is not recorded')
  })

  test('elevation and revision, when a page depends on both', () => {
    const page = pageFor('0.60', { elevationBand: { toMetres: 1200 }, revisionRange: { from: 'C' } })
    expect(ratingFor([page], {}, settings).asks).toEqual(['elevation', 'revision'])
    expect(ratingFor([page], { revision: 'D' }, settings).asks).toEqual(['elevation'])
    expect(ratingFor([page], { revision: 'A' }, settings).asks).toEqual([])
  })

  test('nothing, when the page is for all elevations, revisions and serials', () => {
    expect(ratingFor([pageFor('0.60', {})], {}, settings)).toMatchObject({
      closes: { level: 'Supported' },
      asks: [],
    })
  })

  test('nothing, when the rating is verified anyway and the page agrees', () => {
    const reports = [
      photoLabel('0.60', { furnaceId: 'f1' }),
      readBackDistributor('0.60', { furnaceId: 'f1' }),
      pageFor('0.60', { elevationBand: { toMetres: 1200 } }),
    ]
    expect(ratingFor(reports, { id: 'f1' }, settings)).toMatchObject({
      closes: { level: 'Verified' },
      asks: [],
    })
  })

  test('elevation, when several reports change the answer only together', () => {
    // Each call alone leaves the label and the older manual Verified; all three together leave them 0.963.
    const calls = [1200, 1300, 1400].map((toMetres) =>
      unreadDistributor('0.75', { revisionRange: {}, serialRange: {}, elevationBand: { toMetres } }),
    )
    const reports = [
      photoLabel('0.60', { furnaceId: 'f1' }),
      reportOf('0.60', { furnaceId: 'f1', source: 'older literature', proof: 'document' }),
      ...calls,
    ]
    expect(ratingFor(reports.slice(0, 3), { id: 'f1' }, settings).asks).toEqual([])
    expect(ratingFor(reports, { id: 'f1' }, settings)).toMatchObject({
      closes: { level: 'Verified' },
      asks: ['elevation'],
    })
    expect(ratingFor(reports, { id: 'f1', elevationMetres: 300 }, settings).closes.level).toBe('Supported')
  })

  test('the part number, when parts with different ratings fit the position', () => {
    const reports = [pageFor('0.60', { partNumber: 'QZ-1180' }), pageFor('0.50', { partNumber: 'QZ-1181' })]
    expect(ratingFor(reports, {}, settings)).toMatchObject({
      closes: { level: 'In dispute' },
      asks: ['part number'],
    })
  })
})

describe('a number that nothing but reports for certain furnaces names', () => {
  const levels: Partial<RatingReport>[] = [{ proof: undefined }, { source: 'parts listing' }, {}]
  test.each(levels)('is asked about first, also where the level would not change: %o', (from) => {
    const page = pageFor('0.60', { serialRange: { from: 'K1', to: 'K9' }, ...from })
    const unknown = ratingFor([page], {}, settings)
    expect(unknown.asks).toEqual(['serial'])
    expect(dependsOnFurnace(unknown, 'closes')).toBe(true)
    const inside = ratingFor([page], { serial: 'K5' }, settings)
    expect([inside.asks, dependsOnFurnace(inside, 'closes')]).toEqual([[], false])
    expect(ratingFor([page], { serial: 'K10' }, settings).closes.level).toBe('Not on file')
  })

  test('only this furnace: one serial names it, so revision and elevation need not be stated', () => {
    const label = photoLabel('0.60', { furnaceId: 'f1', serialRange: { from: 'K7', to: 'K7' } })
    const unknown = ratingFor([label], {}, settings)
    expect(unknown.asks).toEqual(['serial'])
    expect(dependsOnFurnace(unknown, 'closes')).toBe(true)
    expect(ratingFor([label], { serial: 'k-7' }, settings)).toMatchObject({
      closes: { level: 'Supported', leads: [] },
      asks: [],
    })
    expect(ratingFor([label], { id: 'f2' }, settings).asks).toEqual(['serial'])
    expect(ratingFor([label], { id: 'f2', serial: 'K8' }, settings).closes.level).toBe('Not on file')
  })

  test('is shown where another report covers every furnace and agrees, or nobody can tell more', () => {
    const one = pageFor('0.60', { serialRange: { from: 'K7', to: 'K7' } })
    const both = ratingFor([one, pageFor('0.60', {})], {}, settings)
    expect(dependsOnFurnace(both, 'closes')).toBe(false)
    const elsewhere = ratingFor([photoLabel('0.60', { furnaceId: 'f1' })], {}, settings)
    expect([elsewhere.asks, dependsOnFurnace(elsewhere, 'closes')]).toEqual([[], false])
    expect(elsewhere.closes.leads[0]?.why).toContain('made on another furnace')
  })

  test('is not what hides the other action’s number', () => {
    const rating = ratingFor(
      [pageFor('0.60', { serialRange: { from: 'K7' } }), pageFor('0.40', { action: 'opens' })],
      {},
      settings,
    )
    expect([dependsOnFurnace(rating, 'closes'), dependsOnFurnace(rating, 'opens')]).toEqual([true, false])
    expect(dependsOnFurnace(rating, 'unstated')).toBe(false)
  })
})

describe('ratingFor, what is known before weighing', () => {
  test('closes, opens and unstated are weighed apart', () => {
    const reports = [
      pageFor('0.70', {}),
      pageFor('0.55', { action: 'opens' }),
      pageFor('0.62', { action: 'not stated' }),
    ]
    const rating = ratingFor(reports, {}, settings)
    expect(rating.closes.pascals).toBeCloseTo(inches(0.7), 9)
    expect(rating.opens.pascals).toBeCloseTo(inches(0.55), 9)
    expect(rating.unstated.pascals).toBeCloseTo(inches(0.62), 9)
  })

  test('a lead for the other action is not known: it names no slip', () => {
    const reports = [
      photoLabel('0.70', { furnaceId: 'f1' }),
      readBackDistributor('0.55', { furnaceId: 'f1' }),
      reportOf('0.55', { furnaceId: 'f1', action: 'opens', source: 'remembered' }),
    ]
    expect(ratingFor(reports, { id: 'f1' }, settings).closes.likelySlip).toBeUndefined()
  })

  test('a sister’s value never becomes this position’s', () => {
    const sister = [pageFor('0.80', { positionKey: 'position-high' })]
    const rating = ratingFor([], {}, settings, sister)
    for (const standing of [rating.closes, rating.opens, rating.unstated])
      expect(standing.level).toBe('Not on file')
  })

  test('the sister’s part number is its own and does not hide it', () => {
    const low = [
      photoLabel('0.45', { furnaceId: 'f1', partNumber: 'QZ-1180' }),
      readBackDistributor('0.80', { furnaceId: 'f1' }),
    ]
    const high = [
      photoLabel('0.80', { furnaceId: 'f1', positionKey: 'position-high', partNumber: 'QZ-1190' }),
    ]
    const { closes } = ratingFor(low, { id: 'f1', partNumber: 'QZ-1180' }, settings, high)
    expect(closes.likelySlip).toBe('sister switch taken for this one')
  })

  test('a switch that opens on rise is left alone by the usual order of make and break', () => {
    const reports = [
      pageFor('0.55', { kind: 'opens on rise' }),
      pageFor('0.70', { kind: 'opens on rise', action: 'opens' }),
    ]
    expect(ratingFor(reports, {}, settings).closes.reasons.join(' ')).not.toContain('beyond the make')
  })
})

describe('ratingFor, for any reports', () => {
  const anyReport = fc
    .record({
      written: fc.constantFrom('0.45', '0.60', '0.70', '6.0'),
      action: fc.constantFrom('closes' as const, 'opens' as const, 'not stated' as const),
      elevationBand: fc.constantFrom(undefined, {}, { toMetres: 1200 }, { fromMetres: 1201 }),
      revisionRange: fc.constantFrom(undefined, {}, { to: 'B' }, { from: 'C' }),
      furnaceId: fc.constantFrom(undefined, 'f1', 'f2'),
      source: fc.constantFrom('current literature' as const, 'distributor' as const, 'remembered' as const),
    })
    .map(({ written, ...parts }) =>
      reportOf(written, { serialRange: {}, proof: 'document', readBack: true, ...parts }),
    )
  const anyFurnace = fc.record({
    id: fc.constantFrom(undefined, 'f1', 'f2'),
    elevationMetres: fc.constantFrom(undefined, 300, 2000),
    revision: fc.constantFrom(undefined, 'A', 'D'),
  })

  test('a furnace of which everything is recorded is asked nothing, and the order of the reports does not matter', () => {
    fc.assert(
      fc.property(fc.array(anyReport, { maxLength: 6 }), anyFurnace, (reports, furnace) => {
        const rating = ratingFor(Object.freeze(reports), Object.freeze(furnace), settings)
        expect(ratingFor([...reports].reverse(), furnace, settings)).toEqual(rating)
        if (furnace.elevationMetres !== undefined && furnace.revision !== undefined)
          expect(rating.asks).toEqual([])
      }),
      { seed: 20260112, numRuns: 200 },
    )
  })

  test('no report that is for another elevation or revision is ever counted or listed', () => {
    fc.assert(
      fc.property(fc.array(anyReport, { maxLength: 6 }), (reports) => {
        const rating = ratingFor(reports, { id: 'f1', elevationMetres: 2000, revision: 'A' }, settings)
        const others = reports.filter(
          ({ elevationBand, revisionRange }) =>
            elevationBand?.toMetres !== undefined || revisionRange?.from !== undefined,
        )
        for (const { reportIds, leads, rivals } of [rating.closes, rating.opens, rating.unstated]) {
          const shown = [
            ...reportIds,
            ...leads.map(({ reportId }) => reportId),
            ...rivals.flatMap((rival) => rival.reportIds),
          ]
          for (const { id } of others) expect(shown).not.toContain(id)
        }
      }),
      { seed: 20260112, numRuns: 200 },
    )
  })
})

describe('ratingFor, what it refuses', () => {
  test('reports of two positions throw a RangeError', () => {
    const reports = [factorySupport('0.60'), factorySupport('0.60', { positionKey: 'position-high' })]
    expect(() => ratingFor(reports, {}, settings)).toThrow('one positionKey')
  })

  test('an elevation that is no number throws a RangeError', () => {
    expect(() => ratingFor([], { elevationMetres: Number.NaN }, settings)).toThrow('finite elevation')
  })
})
