import { describe, expect, test } from 'vitest'
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

// The bars and ages are common practice, no published source.

test('without any proof it is Unverified, and a photo that waits to be sent is said to count once it is', () => {
  const standing = weighReports([photoLabel('0.75', { proof: undefined })], settings)
  expect(standing.level).toBe('Unverified')
  expect(standing.reasons).toContain(
    'No photo, document or call reference backs it yet. Add one; a photo that waits to be sent counts once it is sent.',
  )
})

describe('Verified', () => {
  test('needs two origins: two labels alone are still only switches in hand', () => {
    // 0.97^1.5 = 0.95533973; none: 39 · (0.03/39)^1.5 = 0.00083205: 0.99912983
    const standing = weighReports([photoLabel('0.60'), photoLabel('0.60')], settings)
    expect(standing.probability).toBeCloseTo(0.99912983, 6)
    expect(standing.level).toBe('Supported')
    expect(standing.reasons.join(' ')).toContain('A second source besides the switch itself')
  })

  test('needs a proven report of 0.90 or more: an unproven page and a proven weak call do not do', () => {
    const reports = [currentPage('0.60', { proof: undefined }), unreadDistributor('0.60')]
    const standing = weighReports(reports, settings)
    expect(standing.probability).toBeGreaterThan(0.99)
    expect(standing.level).toBe('Supported')
  })

  test('needs 0.99: three unread distributors who differ leave a label and older literature 0.963', () => {
    // Three of one kind weigh 2/3 each, squared together. s = 0.65/39 = 0.01666667
    // best:  0.97 · 0.88 · (0.25 · s)²       = 0.8536 · 0.0000173611     = 0.0000148194
    // rival: 0.75² · 0.03 · s · 0.12 · s     = 0.5625 · 0.0000010        = 0.0000005625
    // none:  38 · (0.03/39) · (0.12/39) · (0.25/39)²                     = 0.0000000037
    // 0.0000148194/0.0000153856 = 0.96320; rival 0.03656, below 0.05
    const standing = weighReports(
      [
        photoLabel('0.60'),
        reportOf('0.60', { source: 'older literature', proof: 'document' }),
        unreadDistributor('0.75'),
        unreadDistributor('0.75'),
        unreadDistributor('0.75'),
      ],
      settings,
    )
    expect(standing.probability).toBeCloseTo(0.9632, 4)
    expect(standing.rivals[0]?.probability).toBeCloseTo(0.03656, 4)
    expect(standing.level).toBe('Supported')
    expect(standing.reasons.join(' ')).toContain('not reliable enough together')
  })

  test('stands beside an unlikely rival from a source that may be outvoted, and names it', () => {
    const reports = [currentPage('0.60'), photoLabel('0.60'), unreadDistributor('0.75')]
    const standing = weighReports(reports, settings)
    expect(standing).toMatchObject({ level: 'Verified', rivals: [{ disputes: false }] })
    expect(standing.reasons.join(' ')).toContain('unlikely beside the rest')
  })

  test('does not count two reports of one call, or of one switch, as two origins', () => {
    const call = [
      readBackDistributor('0.60', { origin: 'call of Tuesday' }),
      currentPage('0.60', { origin: 'call of Tuesday' }),
    ]
    expect(weighReports(call, settings)).toMatchObject({ level: 'Supported' })
    const twoPhotos = [
      photoLabel('0.60', { origin: 'photo 1', furnaceId: 'f1' }),
      photoLabel('0.60', { origin: 'photo 2', furnaceId: 'f1' }),
    ]
    expect(weighReports(twoPhotos, settings).probability).toBeCloseTo(0.97, 12)
  })
})

describe('one origin', () => {
  test('counts once, at the highest reliability', () => {
    const reports = [
      unreadDistributor('0.60', { origin: 'call' }),
      readBackDistributor('0.60', { origin: 'call' }),
    ]
    expect(weighReports(reports, settings).probability).toBeCloseTo(0.9, 12)
  })

  test('counts once at the highest reliability, also where the more reliable report is the coarser one', () => {
    const reports = [
      unreadDistributor('0.60', { origin: 'call' }),
      readBackDistributor('0.6', { origin: 'call' }),
    ]
    expect(weighReports(reports, settings).probability).toBeCloseTo(0.9, 12)
  })

  test('is one data plate, however often somebody reads it', () => {
    const plate = () => reportOf('0.60', { source: 'data plate', proof: 'photo', furnaceId: 'f1' })
    expect(weighReports([plate(), plate()], settings).probability).toBeCloseTo(0.95, 12)
  })

  test('reported with two values counts once for each: a misreading shows as a dispute', () => {
    const reports = [
      photoLabel('0.60', { origin: 'photo 1' }),
      photoLabel('0.80', { origin: 'photo 1', proof: undefined }),
    ]
    expect(weighReports(reports, settings)).toMatchObject({
      level: 'In dispute',
      rivals: [{ disputes: true }],
    })
  })

  test('a second reader divides the doubt by five: 1 − 0.03/5 = 0.994', () => {
    const standing = weighReports([photoLabel('0.60', { secondPerson: true })], settings)
    expect(standing.probability).toBeCloseTo(0.994, 12)
    expect(standing.level).toBe('Supported')
  })

  test('a second reader of a label of unknown origin changes nothing: the doubt is its source', () => {
    const lead = reportOf('0.60', { source: 'unknown switch label', secondPerson: true })
    expect(weighReports([lead], settings).probability).toBeCloseTo(0.6, 12)
  })

  test('reliability is held at 0.995, also with a second reader', () => {
    const reliability = { 'factory switch label, with photo': { right: 990, wrong: 10 } }
    const report = photoLabel('0.60', { secondPerson: true })
    expect(weighReports([report], { ...settings, reliability }).probability).toBeCloseTo(0.995, 12)
  })
})

describe('In dispute', () => {
  test.each([
    ['a factory label', photoLabel('0.75', { proof: undefined })],
    ['a data plate', reportOf('0.75', { source: 'data plate' })],
    ['current literature', currentPage('0.75')],
    ['factory support', factorySupport('0.75')],
    ['factory support not read back', factorySupport('0.75', { readBack: false })],
    ['a read-back distributor', readBackDistributor('0.75')],
  ])('%s is never outvoted, however little weight is left to it', (_, against) => {
    const majority = [
      photoLabel('0.60'),
      currentPage('0.60'),
      factorySupport('0.60'),
      reportOf('0.60', { source: 'data plate', proof: 'photo' }),
      readBackDistributor('0.60'),
    ]
    const standing = weighReports([...majority, against], settings)
    expect(standing.rivals[0]?.probability).toBeLessThan(0.05)
    expect(standing.level).toBe('In dispute')
    expect(weighReports(majority, settings).level).toBe('Verified')
  })

  test('older literature can be outvoted', () => {
    const reports = [
      photoLabel('0.60'),
      currentPage('0.60'),
      factorySupport('0.60'),
      reportOf('0.75', { source: 'older literature', proof: 'document' }),
    ]
    expect(weighReports(reports, settings).level).toBe('Verified')
  })

  test('begins at a rival of 0.05: 0.046 stands aside, 0.054 disputes', () => {
    // Label 0.97 against a distributor of reliability d; s = 0.65/39; everything over 0.97 · (1 − d) · s:
    // rival ρ = 0.03 d/(0.97 (1 − d)); none 38 · 0.03/39² / (0.97 s) = 0.04636.
    // d = 0.62: ρ = 0.05046, 0.05046/1.09682 = 0.0460. d = 0.66: ρ = 0.06004, 0.06004/1.10640 = 0.0543.
    const against = (right: number) =>
      weighReports([photoLabel('0.60'), unreadDistributor('0.75')], {
        ...settings,
        reliability: { 'distributor, not read back': { right, wrong: 100 - right } },
      })
    expect(against(62).rivals[0]?.probability).toBeCloseTo(0.046, 4)
    expect(against(62).level).toBe('Supported')
    expect(against(66).rivals[0]?.probability).toBeCloseTo(0.0543, 4)
    expect(against(66).level).toBe('In dispute')
  })

  test('begins, for a strong source, with a slip by ten that could be a setting: 0.20 against 2.0', () => {
    const reports = [photoLabel('0.20'), currentPage('0.20'), readBackDistributor('2.0')]
    const standing = weighReports(reports, settings)
    expect(standing.rivals[0]?.probability).toBeLessThan(0.05)
    expect(standing).toMatchObject({ level: 'In dispute', likelySlip: 'ten times' })
  })

  test('does not begin with a coarse number of a strong source that rounds the value shown as well as the rival', () => {
    const standing = weighReports(
      [
        photoLabel('0.65'),
        reportOf('0.65', { source: 'older literature', proof: 'document' }),
        unreadDistributor('0.72'),
        currentPage('0.7'),
      ],
      settings,
    )
    expect(standing.rivals[0]?.sources).toContain('current literature')
    expect(standing.level).toBe('Verified')
  })

  test('names the value, the source and what settles it', () => {
    const { reasons } = weighReports([photoLabel('0.60'), factorySupport('0.75')], settings)
    expect(reasons.join(' ')).toContain(
      'Factory technical support (2 Jan 2026, “0.75 inH2O”) names another value. Settle it with',
    )
  })
})

describe('one step down', () => {
  const oldCall = { saidAt: '2024-01-11' }

  test('a call older than 24 months as the only proof: Supported becomes Unverified', () => {
    const standing = weighReports([readBackDistributor('0.60', oldCall)], settings)
    expect(standing.level).toBe('Unverified')
    expect(standing.reasons.join(' ')).toContain('more than 24 months old')
  })

  test('exactly 24 months is not older', () => {
    const report = readBackDistributor('0.60', { saidAt: '2024-01-12T08:00:00Z' })
    expect(weighReports([report], settings).level).toBe('Supported')
    const aSecondOlder = readBackDistributor('0.60', { saidAt: '2024-01-12T07:59:59Z' })
    expect(weighReports([aSecondOlder], settings).level).toBe('Unverified')
  })

  test('months are calendar months: a call of 31 August is fresh for six months until the last of February', () => {
    const report = readBackDistributor('0.60', { saidAt: '2025-08-31T00:00:00Z' })
    const at = (now: string) => weighReports([report], { now, staleAfterMonths: 6 }).level
    expect(at('2026-02-28T00:00:00Z')).toBe('Supported')
    expect(at('2026-02-28T00:00:01Z')).toBe('Unverified')
  })

  test('two old calls that agree: Verified becomes Supported', () => {
    const reports = [readBackDistributor('0.60', oldCall), factorySupport('0.60', oldCall)]
    expect(weighReports(reports, settings).level).toBe('Supported')
  })

  test('a photo does not go stale, and neither does a rating that it proves', () => {
    const reports = [photoLabel('0.60', { saidAt: '2015-01-01' }), readBackDistributor('0.60', oldCall)]
    expect(weighReports(reports, settings).level).toBe('Verified')
  })

  test('a superseded part number: Supported becomes Unverified', () => {
    const report = photoLabel('0.60', { partNumber: 'QZ-1180' })
    const supersededPartNumbers = (partNumber: string) => partNumber === 'QZ-1180'
    expect(weighReports([report], { ...settings, supersededPartNumbers }).level).toBe('Unverified')
  })

  test('a superseded number beside a proven report of the current part does not step down', () => {
    const reports = [
      photoLabel('0.60', { partNumber: 'QZ-1180' }),
      currentPage('0.60', { partNumber: 'QZ-1181' }),
    ]
    const standing = weighReports(reports, { ...settings, supersededPartNumbers: ['QZ-1180'] })
    expect(standing.level).toBe('Supported')
    expect(standing.reasons.join(' ')).not.toContain('superseded')
  })

  test('both together take two steps', () => {
    const reports = [
      readBackDistributor('0.60', { ...oldCall, partNumber: 'QZ-1180' }),
      factorySupport('0.60', { ...oldCall, partNumber: 'QZ-1180' }),
    ]
    const standing = weighReports(reports, { ...settings, supersededPartNumbers: ['QZ-1180'] })
    expect(standing.level).toBe('Unverified')
  })
})

describe('a magnitude that asks for confirmation', () => {
  test('outside 5 to 2500 Pa a rating is Unverified, whoever says so', () => {
    const says = (pascals: string) =>
      weighReports(
        [
          photoLabel(pascals, { unit: 'Pa' }),
          factorySupport(pascals, { unit: 'Pa' }),
          currentPage(pascals, { unit: 'Pa' }),
        ],
        settings,
      )
    expect(says('2500').level).toBe('Verified')
    expect(says('2501').level).toBe('Unverified')
    expect(says('5').level).toBe('Verified')
    expect(says('4').level).toBe('Unverified')
    expect(says('4').reasons.join(' ')).toContain('Have it confirmed')
  })
})
