import { describe, expect, test } from 'vitest'
import { toPascals } from '@/lib/core/pressure'
import { weighReports } from '@/lib/core/rating'
import {
  currentPage,
  factorySupport,
  photoLabel,
  readBackDistributor,
  reportOf,
  settings,
  unreadDistributor,
} from './reports'

// Every figure here is worked by hand from the start reliabilities and slip shares, which are common practice, no
// published source. M = 40 plausible values, so 1/(M − 1) = 1/39. "None" is the hypothesis that the true value is
// one that nobody reported. Common factors 1/40 of the priors are left out on both sides.

const inches = (value: number) => toPascals(value, 'inH2O')

describe('weighReports, worked by hand', () => {
  test('a photo of the factory label alone: 0.970, Supported', () => {
    // value: 0.97; none: 39 · 0.03/39 = 0.03; 0.97/(0.97 + 0.03) = 0.97
    const standing = weighReports([photoLabel('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.97, 12)
    expect(standing.level).toBe('Supported')
    expect(standing.pascals).toBeCloseTo(149.453346, 6)
    expect(standing.rivals).toEqual([])
  })

  test('a distributor read back, with a reference: exactly 0.900, Supported', () => {
    // value: 0.90; none: 39 · 0.10/39 = 0.10. The bar is 0.90 and reached, with the slack of 1e-9.
    const standing = weighReports([readBackDistributor('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.9, 12)
    expect(standing.level).toBe('Supported')
  })

  test('a distributor read back, without a reference: 0.900 and nothing to check it by, Unverified', () => {
    const standing = weighReports([readBackDistributor('0.60', { proof: undefined })], settings)
    expect(standing.probability).toBeCloseTo(0.9, 12)
    expect(standing.level).toBe('Unverified')
    expect(standing.reasons.join(' ')).toContain('No photo, document or call reference')
  })

  test('a distributor not read back: 0.750, Unverified', () => {
    // value: 0.75; none: 39 · 0.25/39 = 0.25
    const standing = weighReports([unreadDistributor('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.75, 12)
    expect(standing.level).toBe('Unverified')
  })

  test('a photo of the label and a read-back distributor: above 0.99, Verified', () => {
    // value: 0.97 · 0.90 = 0.873; none: 39 · (0.03/39) · (0.10/39) = 0.003/39 = 0.00007692
    // 0.873/0.87307692 = 0.99991189
    const standing = weighReports([photoLabel('0.60'), readBackDistributor('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.99991189, 8)
    expect(standing.level).toBe('Verified')
    expect(standing.sources.map(({ source }) => source)).toEqual(['factory switch label', 'distributor'])
  })

  test('two distributors not read back: Supported at most', () => {
    // Two of one kind weigh w = 3/4 each. value: 0.75^1.5 = 0.64951905; none: 39 · (0.25/39)^1.5
    // = 39 · 0.00641026^1.5 = 39 · 0.00051323 = 0.02001602; 0.64951905/0.66953507 = 0.97010459
    const standing = weighReports([unreadDistributor('0.60'), unreadDistributor('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.97010459, 7)
    expect(standing.level).toBe('Supported')
    expect(standing.reasons.join(' ')).toContain('No report with proof is from a source reliable enough')
  })

  test('a hundred distributors not read back: still Supported at most', () => {
    const reports = Array.from({ length: 100 }, () => unreadDistributor('0.60'))
    const standing = weighReports(reports, settings)
    expect(standing.probability).toBeGreaterThan(0.999)
    expect(standing.level).toBe('Supported')
  })

  test('two distributors read back with references: above 0.99 from two origins, Verified', () => {
    // value: 0.9^1.5 = 0.85381497; none: 39 · (0.1/39)^1.5 = 39 · 0.00012984 = 0.00506370
    // 0.85381497/0.85887867 = 0.99410430
    const standing = weighReports([readBackDistributor('0.60'), readBackDistributor('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.9941043, 6)
    expect(standing.level).toBe('Verified')
  })

  test('a photo of the label against three agreeing leads: the label, Supported, the leads listed', () => {
    const leads = [
      reportOf('0.70', { source: 'unknown switch label', proof: 'photo' }),
      reportOf('0.70', { source: 'parts listing' }),
      reportOf('0.70', { source: 'remembered' }),
    ]
    const standing = weighReports([photoLabel('0.60'), ...leads], settings)
    expect(standing.pascals).toBeCloseTo(inches(0.6), 9)
    expect(standing.probability).toBeCloseTo(0.97, 12)
    expect(standing.level).toBe('Supported')
    expect(standing.rivals).toEqual([])
    expect(standing.leads.map(({ agrees }) => agrees)).toEqual([false, false, false])
  })

  test('a photo of the label against a distributor’s ten times, not read back: the label, slip named, Supported', () => {
    // s(0.60 → 6.0) = 0.35/2 + (0.40 + 0.25)/39 = 0.175 + 0.01666667 = 0.19166667, and the same back again.
    // label:  0.97 · 0.25 · 0.19166667        = 0.04647917
    // ten times, prior a twentieth: 0.75 · 0.03 · 0.19166667 / 20 = 0.00021563
    // none:   38 · (0.03/39) · (0.25/39)      = 0.00018738
    // 0.04647917/0.04688218 = 0.99140384; rival 0.00021563/0.04688218 = 0.00459940
    const standing = weighReports([photoLabel('0.60'), unreadDistributor('6.0')], settings)
    expect(standing.pascals).toBeCloseTo(inches(0.6), 9)
    expect(standing.probability).toBeCloseTo(0.99140384, 6)
    expect(standing.rivals[0]?.probability).toBeCloseTo(0.0045994, 6)
    expect(standing.level).toBe('Supported')
    expect(standing.likelySlip).toBe('ten times')
    expect(standing.reasons.join(' ')).toContain('slipped decimal point')
  })

  test('a photo of the label against a read-back distributor’s ten times: the label, slip named, Supported', () => {
    // label: 0.97 · 0.10 · 0.19166667 = 0.01859167; ten times: 0.90 · 0.03 · 0.19166667 / 20 = 0.00025875
    // none: 38 · (0.03/39) · (0.10/39) = 0.00007495; 0.01859167/0.01892537 = 0.98236755
    const standing = weighReports([photoLabel('0.60'), readBackDistributor('6.0')], settings)
    expect(standing.probability).toBeCloseTo(0.98236755, 6)
    expect(standing.level).toBe('Supported')
    expect(standing.likelySlip).toBe('ten times')
  })

  test('a verified rating with one more source at ten times is held at Supported', () => {
    const standing = weighReports(
      [photoLabel('0.60'), currentPage('0.60'), readBackDistributor('6.0')],
      settings,
    )
    expect(standing.probability).toBeGreaterThan(0.99)
    expect(standing.level).toBe('Supported')
    expect(standing.likelySlip).toBe('ten times')
  })

  test('a slip by ten that stays within 0.10 to 3.0 in. w.c. is a rival like any other: In dispute', () => {
    const standing = weighReports([photoLabel('0.20'), readBackDistributor('2.0')], settings)
    expect(standing.level).toBe('In dispute')
    expect(standing.likelySlip).toBe('ten times')
  })

  test('a photo of the label and literature against factory support: In dispute', () => {
    // s = 0.40 + 0.25 spread over 39 = 0.01666667.
    // label and page: 0.97 · 0.96 · 0.04 · 0.01666667              = 0.00062080
    // support:        0.96 · 0.03 · 0.04 · 0.01666667²             = 0.00000032
    // none: 38 · (0.03/39) · (0.04/39) · (0.04/39)                 = 0.00000003075
    // rival 0.00000032/0.00062115 = 0.000515: far below 0.05, yet factory support is never outvoted.
    const standing = weighReports([photoLabel('0.60'), currentPage('0.60'), factorySupport('0.75')], settings)
    expect(standing.level).toBe('In dispute')
    expect(standing.pascals).toBeCloseTo(inches(0.6), 9)
    expect(standing.rivals[0]?.probability).toBeCloseTo(0.000515, 6)
    expect(standing.rivals[0]).toMatchObject({ sources: ['factory support'], disputes: true })
  })

  test('a photo of the label against a read-back distributor who gives the known break point: In dispute, break taken for make named', () => {
    // Known break 0.55: s(0.70 → 0.55) = 0.25 + 0.40/39 = 0.26025641. The other way round 0.55 is the known value
    // itself, so that slip does not exist: s(0.55 → 0.70) = (0.40 + 0.25)/39 = 0.01666667.
    // label:       0.97 · 0.10 · 0.26025641   = 0.02524487
    // distributor: 0.90 · 0.03 · 0.01666667   = 0.00045
    // none:        38 · (0.03/39) · (0.10/39) = 0.00007495
    // 0.02524487/0.02576982 = 0.97962923; rival 0.01746229
    const known = { otherAction: [inches(0.55)], sister: [] }
    const standing = weighReports([photoLabel('0.70'), readBackDistributor('0.55')], settings, known)
    expect(standing.probability).toBeCloseTo(0.97962923, 6)
    expect(standing.rivals[0]?.probability).toBeCloseTo(0.01746229, 6)
    expect(standing.level).toBe('In dispute')
    expect(standing.likelySlip).toBe('break taken for make')
    expect(standing.reasons.join(' ')).toContain('break may have been taken for the make')
  })

  test('the same from a distributor not read back has too little weight to dispute: Supported, slip still named', () => {
    // label: 0.97 · 0.25 · 0.26025641 = 0.06311218; rival: 0.75 · 0.03 · 0.01666667 = 0.000375; none 0.00018738
    // rival 0.000375/0.06367456 = 0.00588933, below 0.05; best 0.99116787, but only the switch itself agrees.
    const known = { otherAction: [inches(0.55)], sister: [] }
    const standing = weighReports([photoLabel('0.70'), unreadDistributor('0.55')], settings, known)
    expect(standing.probability).toBeCloseTo(0.99116787, 6)
    expect(standing.level).toBe('Supported')
    expect(standing.likelySlip).toBe('break taken for make')
  })

  test('any other value from a distributor not read back has 0.05 and more: In dispute', () => {
    // label: 0.97 · 0.25 · 0.01666667 = 0.00404167; rival: 0.75 · 0.03 · 0.01666667 = 0.000375; none 0.00018738
    // rival 0.000375/0.00460405 = 0.08145
    const standing = weighReports([photoLabel('0.70'), unreadDistributor('0.65')], settings)
    expect(standing.rivals[0]?.probability).toBeCloseTo(0.08145, 5)
    expect(standing.level).toBe('In dispute')
  })

  test('no report at all: Not on file, and the reason says what to do', () => {
    const standing = weighReports([], settings)
    expect(standing).toMatchObject({ level: 'Not on file', probability: 0, reportIds: [] })
    expect(standing.pascals).toBeUndefined()
    expect(standing.reasons.join(' ')).toContain('Start a rating request')
  })

  test('every source alone has its own start reliability', () => {
    const alone: [Parameters<typeof reportOf>[1], number][] = [
      [{ source: 'factory switch label', proof: 'photo' }, 0.97],
      [{ source: 'factory switch label' }, 0.92],
      [{ source: 'data plate' }, 0.95],
      [{ source: 'current literature' }, 0.96],
      [{ source: 'older literature' }, 0.88],
      [{ source: 'factory support', readBack: true }, 0.96],
      [{ source: 'factory support' }, 0.75],
      [{ source: 'distributor', readBack: true }, 0.9],
      [{ source: 'distributor' }, 0.75],
      [{ source: 'unknown switch label' }, 0.6],
      [{ source: 'parts listing' }, 0.6],
      [{ source: 'remembered' }, 0.5],
      [{ source: 'imported' }, 0.5],
    ]
    for (const [parts, probability] of alone)
      expect(weighReports([reportOf('0.60', parts)], settings).probability).toBeCloseTo(probability, 12)
  })
})

describe('weighReports, what it refuses', () => {
  test('a switch that is not a factory part says nothing: refused before weighing, with the reason', () => {
    const generic = readBackDistributor('0.60', { partClass: 'general-purpose' })
    const standing = weighReports([generic], settings)
    expect(standing.level).toBe('Not on file')
    expect(standing.leads).toEqual([])
    expect(standing.reasons.join(' ')).toContain('adjustable or general-purpose switch')
  })

  test('reports of two positions throw a RangeError that names the positions', () => {
    const reports = [photoLabel('0.60'), photoLabel('0.60', { positionKey: 'position-high' })]
    expect(() => weighReports(reports, settings)).toThrow(/one positionKey, not position-main, position-high/)
  })

  test('reports of two actions throw a RangeError', () => {
    const reports = [photoLabel('0.60'), photoLabel('0.60', { action: 'opens' })]
    expect(() => weighReports(reports, settings)).toThrow(RangeError)
  })

  test('one id twice throws a RangeError', () => {
    const report = photoLabel('0.60')
    expect(() => weighReports([report, report], settings)).toThrow('different ids')
  })

  test.each([
    ['a negative magnitude', { pascals: -150 }],
    ['no number', { pascals: Number.NaN }],
    ['infinity', { pascals: Number.POSITIVE_INFINITY }],
    ['a negative tolerance', { toleranceAbove: -1 }],
    ['half a decimal', { decimals: 1.5 }],
    ['no date', { saidAt: 'last week' }],
  ])('%s throws a RangeError', (_, parts) => {
    expect(() => weighReports([photoLabel('0.60', parts)], settings)).toThrow(RangeError)
  })

  test.each([
    ['one plausible value', { plausibleValues: 1 }],
    ['a fraction of a value', { plausibleValues: 40.5 }],
    ['a negative age', { staleAfterMonths: -1 }],
    ['a time that is none', { now: 'now' }],
    ['an empty count', { reliability: { 'factory switch label, with photo': { right: 0, wrong: 3 } } }],
  ])('settings with %s throw a RangeError', (_, parts) => {
    expect(() => weighReports([photoLabel('0.60')], { ...settings, ...parts })).toThrow(RangeError)
  })

  test('a magnitude of nothing is kept as written, Unverified', () => {
    expect(weighReports([photoLabel('0')], settings)).toMatchObject({ level: 'Unverified', pascals: 0 })
  })
})
