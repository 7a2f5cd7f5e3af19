import { describe, expect, test } from 'vitest'
import { learnReliability, type RatingReport, startCounts, weighReports } from '@/lib/core/rating'
import { currentPage, factorySupport, photoLabel, readBackDistributor, settings } from './reports'

const label = photoLabel('0.60', { saidAt: '2025-11-03' })
const page = currentPage('0.60', { saidAt: '2025-11-04' })
const support = factorySupport('0.75', { saidAt: '2025-11-05' })
const newCall = factorySupport('0.60', { saidAt: '2025-11-20', origin: 'call of the 20th' })

const settledBy = (evidence: RatingReport, ...overruled: RatingReport[]) => ({
  ...settings,
  settledDisputes: [{ evidenceReportId: evidence.id, overruledReportIds: overruled.map(({ id }) => id) }],
})

describe('a settled dispute', () => {
  test('ends with new evidence: what is overruled is left out and still named', () => {
    const reports = [label, page, support, newCall]
    expect(weighReports(reports, settings).level).toBe('In dispute')
    const standing = weighReports(reports, settledBy(newCall, support))
    expect(standing).toMatchObject({ level: 'Verified', rivals: [] })
    expect(standing.reasons.join(' ')).toContain('“0.75 inH2O”) was overruled by factory technical support')
  })

  test('opens again when the evidence is withdrawn', () => {
    const standing = weighReports([label, page, support], settledBy(newCall, support))
    expect(standing.level).toBe('In dispute')
    expect(standing.reasons.join(' ')).toContain('so it is open again')
  })

  test('opens again when somebody says later that the overruled value holds', () => {
    const later = factorySupport('0.75', { saidAt: '2025-12-01' })
    const standing = weighReports([label, page, support, newCall, later], settledBy(newCall, support))
    expect(standing.level).toBe('In dispute')
  })

  test.each([
    ['a distributor', readBackDistributor('0.60', { saidAt: '2025-11-20' })],
    [
      'factory support without a reference',
      factorySupport('0.60', { saidAt: '2025-11-20', proof: undefined }),
    ],
    ['a page nobody photographed or named', currentPage('0.60', { saidAt: '2025-11-20', proof: undefined })],
  ])('is not settled by %s', (_, evidence) => {
    const standing = weighReports([label, support, evidence], settledBy(evidence, support))
    expect(standing.level).toBe('In dispute')
    expect(standing.reasons.join(' ')).toContain('cannot settle a dispute')
  })

  test('is not settled by evidence older than what it would overrule', () => {
    const standing = weighReports([label, page, support], settledBy(page, support, label))
    // The page is of the 4th and so overrules the label of the 3rd; a day of grace covers the call of the 5th.
    expect(standing.level).toBe('Supported')
    const weekLater = factorySupport('0.75', { saidAt: '2025-11-12' })
    const reopened = weighReports([label, page, weekLater], settledBy(page, weekLater))
    expect(reopened.level).toBe('In dispute')
    expect(reopened.reasons.join(' ')).toContain('no new evidence')
  })

  test('evidence that is overruled itself settles nothing any more', () => {
    const newest = currentPage('0.75', { saidAt: '2025-12-01' })
    const standing = weighReports([label, support, newCall, newest], {
      ...settings,
      settledDisputes: [
        { evidenceReportId: newCall.id, overruledReportIds: [support.id] },
        { evidenceReportId: newest.id, overruledReportIds: [newCall.id, label.id] },
      ],
    })
    expect(standing).toMatchObject({ level: 'Verified', rivals: [] })
    expect(standing.reportIds).toEqual([support.id, newest.id])
  })

  test('of reports that are not here changes nothing', () => {
    const elsewhere = { evidenceReportId: 'x', overruledReportIds: ['y'] }
    expect(weighReports([label], { ...settings, settledDisputes: [elsewhere] })).toEqual(
      weighReports([label], settings),
    )
  })
})

describe('learnReliability', () => {
  const reports = new Map([label, page, support, newCall].map((report) => [report.id, report]))
  const settled = {
    evidenceReportId: newCall.id,
    overruledReportIds: [support.id],
    upheldReportIds: [label.id, page.id, newCall.id],
  }

  test('counts one against an overruled source and one for each that was right; the evidence is no test', () => {
    const counts = learnReliability([settled], reports)
    expect(counts['factory support, read back']).toEqual({ right: 96, wrong: 5 })
    expect(counts['factory switch label, with photo']).toEqual({ right: 98, wrong: 3 })
    expect(counts['current literature']).toEqual({ right: 97, wrong: 4 })
    expect(startCounts['current literature']).toEqual({ right: 96, wrong: 4 })
  })

  test('what was learned is what a report alone then has: 98/101', () => {
    const reliability = learnReliability([settled], reports)
    expect(weighReports([photoLabel('0.60')], { ...settings, reliability }).probability).toBeCloseTo(
      98 / 101,
      12,
    )
  })

  test('a dispute over a report that is not given throws a RangeError', () => {
    expect(() => learnReliability([settled], new Map())).toThrow(RangeError)
  })
})
