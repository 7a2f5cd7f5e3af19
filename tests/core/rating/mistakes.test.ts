import { describe, expect, test } from 'vitest'
import { toPascals } from '@/lib/core/pressure'
import { breakBeyondMake, ratingFor, weighReports } from '@/lib/core/rating'
import {
  currentPage,
  factorySupport,
  photoLabel,
  readBackDistributor,
  reportOf,
  settings,
  unreadDistributor,
} from './reports'

// The mistakes that people make with ratings (common practice, no published source), one test for each whose guard
// is the weighing of reports.

const inches = (value: number) => toPascals(value, 'inH2O')

describe('the typical mistakes', () => {
  test('misread decimal: 6.0 alone is outside the usual range, so even a photo of it is Unverified', () => {
    // 6.0: 0.97/20 = 0.0485; none: 0.03; 0.0485/0.0785 = 0.61783439
    const standing = weighReports([photoLabel('6.0')], settings)
    expect(standing.probability).toBeCloseTo(0.61783439, 7)
    expect(standing.level).toBe('Unverified')
  })

  test('misread decimal: 0.06 beside 0.60 is named a tenth, and the rating is held at Supported', () => {
    const standing = weighReports(
      [photoLabel('0.60'), currentPage('0.60'), readBackDistributor('0.06')],
      settings,
    )
    expect(standing).toMatchObject({ level: 'Supported', likelySlip: 'a tenth' })
    expect(standing.pascals).toBeCloseTo(inches(0.6), 9)
  })

  test('misread decimal: a tenth is recognised at the coarser decimals that it was written with', () => {
    const standing = weighReports([photoLabel('0.64'), unreadDistributor('0.06')], settings)
    expect(standing.likelySlip).toBe('a tenth')
  })

  test('break taken for make: named from the break point on file', () => {
    const reports = [
      photoLabel('0.70', { furnaceId: 'f1' }),
      photoLabel('0.55', { furnaceId: 'f1', action: 'opens' }),
      readBackDistributor('0.55', { furnaceId: 'f1' }),
    ]
    const { closes, opens } = ratingFor(reports, { id: 'f1' }, settings)
    expect(closes).toMatchObject({ level: 'In dispute', likelySlip: 'break taken for make' })
    expect(closes.pascals).toBeCloseTo(inches(0.7), 9)
    expect(opens.level).toBe('Supported')
  })

  test('make taken for break: named from the make point on file', () => {
    const reports = [
      photoLabel('0.70', { furnaceId: 'f1' }),
      photoLabel('0.55', { furnaceId: 'f1', action: 'opens' }),
      readBackDistributor('0.70', { furnaceId: 'f1', action: 'opens' }),
    ]
    const { opens } = ratingFor(reports, { id: 'f1' }, settings)
    expect(opens).toMatchObject({ level: 'In dispute', likelySlip: 'make taken for break' })
  })

  test('break taken for make: a number without its word is neither, and never becomes a make point', () => {
    const reports = [photoLabel('0.55', { furnaceId: 'f1', action: 'not stated' })]
    const rating = ratingFor(reports, { id: 'f1' }, settings)
    expect(rating.closes.level).toBe('Not on file')
    expect(rating.opens.level).toBe('Not on file')
    expect(rating.unstated).toMatchObject({ level: 'Supported' })
  })

  test('break taken for make: of a number without its word neither is said', () => {
    const known = { otherAction: [inches(0.55)], sister: [] }
    const reports = [
      photoLabel('0.70', { action: 'not stated' }),
      readBackDistributor('0.55', { action: 'not stated' }),
    ]
    expect(weighReports(reports, settings, known).likelySlip).toBeUndefined()
  })

  test('break taken for make: a break beyond the make on file is pointed out', () => {
    const reports = [
      photoLabel('0.55', { furnaceId: 'f1' }),
      photoLabel('0.70', { furnaceId: 'f1', action: 'opens' }),
    ]
    const { closes, opens } = ratingFor(reports, { id: 'f1' }, settings)
    for (const { reasons, outOfOrder } of [closes, opens]) {
      expect(reasons.join(' ')).toContain('The break point on file is beyond the make point')
      expect(outOfOrder).toEqual(['break beyond make'])
    }
  })

  test('breakBeyondMake(closes, opens) holds of air switches alone, and of no two numbers that are the same', () => {
    const point = (value: number, kind: 'one-port' | 'two-port' | 'opens on rise' | 'gas pressure') => ({
      pascals: inches(value),
      kind,
    })
    expect(breakBeyondMake(point(0.48, 'one-port'), point(0.62, 'one-port'))).toBe(true)
    expect(breakBeyondMake(point(0.48, 'two-port'), { pascals: inches(0.62) })).toBe(true)
    expect(breakBeyondMake(point(0.62, 'one-port'), point(0.48, 'one-port'))).toBe(false)
    expect(breakBeyondMake(point(0.48, 'one-port'), point(0.48, 'one-port'))).toBe(false)
    expect(breakBeyondMake(point(0.48, 'opens on rise'), point(0.62, 'opens on rise'))).toBe(false)
    expect(breakBeyondMake(point(3.5, 'gas pressure'), point(10, 'gas pressure'))).toBe(false)
    expect(breakBeyondMake({ pascals: undefined }, point(0.62, 'one-port'))).toBe(false)
  })

  test('low and high transposed: the sister switch’s known value is named', () => {
    const low = [
      photoLabel('0.45', { furnaceId: 'f1', stage: 'low fire' }),
      readBackDistributor('0.80', { furnaceId: 'f1', stage: 'low fire' }),
    ]
    const high = [photoLabel('0.80', { furnaceId: 'f1', stage: 'high fire', positionKey: 'position-high' })]
    const { closes } = ratingFor(low, { id: 'f1' }, settings, high)
    expect(closes).toMatchObject({
      level: 'In dispute',
      likelySlip: 'sister switch taken for this one',
      stage: 'low fire',
    })
    expect(closes.pascals).toBeCloseTo(inches(0.45), 9)
  })

  test('low and high transposed: a low-fire value beyond the high-fire one is pointed out on both', () => {
    const low = [photoLabel('0.80', { furnaceId: 'f1', stage: 'low fire' })]
    const high = [photoLabel('0.45', { furnaceId: 'f1', stage: 'high fire', positionKey: 'position-high' })]
    const warning = 'The low-fire value on file is beyond the high-fire value'
    expect(ratingFor(low, { id: 'f1' }, settings, high).closes.reasons.join(' ')).toContain(warning)
    expect(ratingFor(high, { id: 'f1' }, settings, low).closes.reasons.join(' ')).toContain(warning)
    const rightWayRound = ratingFor(low, { id: 'f1' }, settings, [
      photoLabel('0.95', { furnaceId: 'f1', stage: 'high fire', positionKey: 'position-high' }),
    ])
    expect(rightWayRound.closes.reasons.join(' ')).not.toContain(warning)
  })

  test('wrong stage: reports that agree on the number and contradict each other on the stage are in dispute', () => {
    const standing = weighReports(
      [photoLabel('0.60', { stage: 'low fire' }), currentPage('0.60', { stage: 'high fire' })],
      settings,
    )
    expect(standing).toMatchObject({ level: 'In dispute', stage: 'not stated', rivals: [] })
    expect(standing.reasons.join(' ')).toContain('contradict each other on the stage: high fire, low fire')
  })

  test('one port read, differential rated: reports that contradict each other on the points are in dispute', () => {
    const standing = weighReports(
      [photoLabel('0.60'), currentPage('0.60', { between: 'two ports' })],
      settings,
    )
    expect(standing).toMatchObject({ level: 'In dispute', between: 'not stated' })
  })

  test('one port read, differential rated: a report that leaves the points open contradicts nothing', () => {
    const standing = weighReports(
      [photoLabel('0.60'), currentPage('0.60', { between: 'not stated', tap: 'not stated' })],
      settings,
    )
    expect(standing).toMatchObject({ level: 'Verified', between: 'port and room', tap: 'inducer inlet' })
  })

  test('a universal part’s label taken as the furnace’s rating: refused, in ratingFor too', () => {
    const reports = [photoLabel('0.60', { furnaceId: 'f1', partClass: 'general-purpose' })]
    const { closes } = ratingFor(reports, { id: 'f1' }, settings)
    expect(closes).toMatchObject({ level: 'Not on file', leads: [] })
    expect(closes.reasons.join(' ')).toContain('general-purpose')
  })

  test('a universal part’s label: one that nobody has shown to be the factory part’s is a lead', () => {
    const standing = weighReports([photoLabel('0.60', { partClass: 'not known' })], settings)
    expect(standing).toMatchObject({ level: 'Unverified', leads: [{ agrees: true }] })
    expect(standing.probability).toBeCloseTo(0.6, 12)
  })

  test('superseded part: one step down, and the reason says why', () => {
    const reports = [
      photoLabel('0.60', { partNumber: 'QZ-1180' }),
      currentPage('0.60', { partNumber: 'QZ1180' }),
    ]
    expect(weighReports(reports, settings).level).toBe('Verified')
    const standing = weighReports(reports, { ...settings, supersededPartNumbers: ['qz 1180'] })
    expect(standing.level).toBe('Supported')
    expect(standing.reasons.join(' ')).toContain('QZ-1180')
    expect(standing.reasons.join(' ')).toContain('superseded')
  })

  test('superseded part: the old part’s value is not carried over to the part that replaces it', () => {
    const reports = [photoLabel('0.60', { furnaceId: 'f1', partNumber: 'QZ-1180' })]
    const { closes } = ratingFor(reports, { id: 'f1', partNumber: 'QZ-1181' }, settings)
    expect(closes.level).toBe('Not on file')
    expect(closes.reasons.join(' ')).toContain('another part number')
  })

  test('altitude kit: the label is below the page for the valley, so the elevation is asked', () => {
    const reports = [
      photoLabel('0.45', { furnaceId: 'f1' }),
      currentPage('0.60', { revisionRange: {}, serialRange: {}, elevationBand: { toMetres: 1200 } }),
    ]
    const unknown = ratingFor(reports, { id: 'f1' }, settings)
    expect(unknown.asks).toEqual(['elevation'])
    expect(unknown.closes.level).toBe('Unverified')
    expect(unknown.closes.reasons.join(' ')).toContain('Record what it depends on')
    expect(ratingFor(reports, { id: 'f1', elevationMetres: 300 }, settings).closes.level).toBe('In dispute')
    const high = ratingFor(reports, { id: 'f1', elevationMetres: 1900 }, settings)
    expect(high).toMatchObject({ closes: { level: 'Supported' }, asks: [] })
    expect(high.closes.pascals).toBeCloseTo(inches(0.45), 9)
  })

  test('altitude kit: a report for the valley, made on this very furnace, does not hold for it in the hills', () => {
    const reports = [factorySupport('0.60', { furnaceId: 'f1', elevationBand: { toMetres: 1200 } })]
    expect(ratingFor(reports, { id: 'f1', elevationMetres: 1900 }, settings).closes.level).toBe('Not on file')
  })

  test('handwritten label: a lead that never makes a rating', () => {
    const standing = weighReports([reportOf('0.60', { source: 'remembered', proof: 'photo' })], settings)
    expect(standing).toMatchObject({ level: 'Unverified', leads: [{ source: 'remembered' }] })
    expect(standing.probability).toBeCloseTo(0.5, 12)
  })

  test('pascals and inches mixed up: the number is named as read in another unit', () => {
    const standing = weighReports([photoLabel('150', { unit: 'Pa' }), readBackDistributor('150')], settings)
    expect(standing).toMatchObject({ level: 'In dispute', likelySlip: 'number read in another unit' })
    expect(standing.pascals).toBe(150)
  })

  test('millibars and inches mixed up: 1.5 beside 0.60 in. w.c. is named too', () => {
    const standing = weighReports([photoLabel('0.60'), readBackDistributor('1.5')], settings)
    expect(standing.likelySlip).toBe('number read in another unit')
  })

  test('sign dropped: a report without a sense agrees; a contrary sense puts the rating in dispute', () => {
    const dropped = weighReports([photoLabel('0.60'), currentPage('0.60', { sense: 'not stated' })], settings)
    expect(dropped).toMatchObject({ level: 'Verified', sense: 'suction' })
    const contrary = weighReports([photoLabel('0.60'), currentPage('0.60', { sense: 'pressure' })], settings)
    expect(contrary).toMatchObject({ level: 'In dispute', sense: 'not stated' })
  })

  test('wrong model or one digit off: a report for other serials is left out', () => {
    const reports = [
      currentPage('0.60', {
        revisionRange: {},
        serialRange: { from: 'K1000', to: 'K1999' },
        elevationBand: {},
      }),
    ]
    expect(ratingFor(reports, { serial: 'K1500' }, settings).closes.level).toBe('Supported')
    const other = ratingFor(reports, { serial: 'K2500' }, settings)
    expect(other.closes.level).toBe('Not on file')
    expect(other.closes.reasons.join(' ')).toContain('another serial')
  })

  test('copy-over: one page entered twice counts once', () => {
    const once = weighReports([currentPage('0.60', { origin: 'page 12' })], settings)
    const twice = weighReports(
      [currentPage('0.60', { origin: 'page 12' }), currentPage('0.60', { origin: 'page 12' })],
      settings,
    )
    expect(twice.probability).toBeCloseTo(once.probability, 12)
    expect(twice.level).toBe('Supported')
  })

  test('gas manifold pressure entered as the switch’s value: 3.5 from a distributor is Unverified', () => {
    expect(weighReports([readBackDistributor('3.5')], settings).level).toBe('Unverified')
  })

  test('old record of a different furnace at the same address: a lead, not a rating', () => {
    const { closes } = ratingFor([photoLabel('0.60', { furnaceId: 'the old one' })], { id: 'f1' }, settings)
    expect(closes.level).toBe('Unverified')
    expect(closes.probability).toBeCloseTo(0.6, 12)
    expect(closes.leads[0]?.why).toContain('made on another furnace')
  })
})
