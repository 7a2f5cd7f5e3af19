import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { kaplanMeier, type Lifetimes, logRank, medianTime } from '@/lib/core/callbacks'

/** Times as tables print them, '+' behind those that were still without event when watching stopped. */
function lifetimes(printed: string): Lifetimes {
  const marks = printed.trim().split(/\s+/)
  return Object.freeze({
    times: Object.freeze(marks.map((mark) => Number.parseFloat(mark))),
    events: Object.freeze(marks.map((mark) => !mark.endsWith('+'))),
  })
}

/** Half a unit of the last digit that is printed. */
const printedAs = (value: number, printed: string) =>
  expect(Math.abs(value - Number(printed))).toBeLessThanOrEqual(
    0.5 * 10 ** -(printed.split('.')[1]?.length ?? 0) + 1e-12,
  )

/** Rows of time, at risk, events, survival, standard error; '-' where it is not defined. */
function expectTable(group: Lifetimes, rows: string): void {
  const steps = kaplanMeier(group.times, group.events)
  const printed = rows
    .trim()
    .split('\n')
    .map((row) => row.trim().split(/\s+/))
  expect(steps).toHaveLength(printed.length)
  printed.forEach(([time, atRisk, events, survival, error], place) => {
    const step = steps[place]!
    expect([step.time, step.atRisk, step.events]).toEqual([Number(time), Number(atRisk), Number(events)])
    printedAs(step.survival, survival!)
    if (error === '-') expect(step.standardError).toBe('not defined')
    else printedAs(Number(step.standardError), error!)
  })
}

const answered = (groups: readonly Lifetimes[]) => {
  const result = logRank(groups)
  if (!result.ok) throw new Error(result.problem.message)
  return result.value
}

/**
 * Remission under 6-mercaptopurine and placebo: E. J. Freireich et al., Blood 21 (1963) 699-716, data as in
 * E. A. Gehan, Biometrika 52 (1965) 203-223. Output: G. Rodriguez, Princeton, survival notes (R survfit and survdiff,
 * Stata sts test).
 */
describe('the 6-MP trial', () => {
  const mercaptopurine = lifetimes('6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+')
  const placebo = lifetimes('1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23')

  test('Kaplan-Meier and Greenwood, 6-MP', () => {
    expectTable(
      mercaptopurine,
      `6 21 3 0.857 0.0764
       7 17 1 0.807 0.0869
       10 15 1 0.753 0.0963
       13 12 1 0.690 0.1068
       16 11 1 0.627 0.1141
       22 7 1 0.538 0.1282
       23 6 1 0.448 0.1346`,
    )
  })

  test('Kaplan-Meier and Greenwood, placebo', () => {
    expectTable(
      placebo,
      `1 21 2 0.9048 0.0641
       2 19 2 0.8095 0.0857
       3 17 1 0.7619 0.0929
       4 16 2 0.6667 0.1029
       5 14 2 0.5714 0.1080
       8 12 4 0.3810 0.1060
       11 8 2 0.2857 0.0986
       12 6 2 0.1905 0.0857
       15 4 1 0.1429 0.0764
       17 3 1 0.0952 0.0641
       22 2 1 0.0476 0.0465
       23 1 1 0 -`,
    )
  })

  test('the log(−log) interval at 23 weeks is Stata’s, 0.1881 to 0.6801 (R’s plain one, on the log scale, differs)', () => {
    const last = kaplanMeier(mercaptopurine.times, mercaptopurine.events).at(-1)!
    printedAs(Number(last.interval[0]), '0.1881')
    printedAs(Number(last.interval[1]), '0.6801')
  })

  test('medians 23 and 8 weeks', () => {
    const median = ({ times, events }: Lifetimes) => medianTime(kaplanMeier(times, events))
    expect(median(mercaptopurine)).toMatchObject({ ok: true, value: { time: 23 } })
    expect(median(placebo)).toMatchObject({ ok: true, value: { time: 8 } })
  })

  test('log-rank: observed 9 and 21, expected 19.25 and 10.75, χ² 16.79, p 0.00004', () => {
    const found = answered([mercaptopurine, placebo])
    expect(found.observed).toEqual([9, 21])
    printedAs(found.expected[0]!, '19.25')
    printedAs(found.expected[1]!, '10.75')
    printedAs(found.chiSquare, '16.79')
    expect(found.degreesOfFreedom).toBe(1)
    printedAs(found.pValue, '0.00004')
    expect(found.pValue).toBeCloseTo(1 - jstat.chisquare.cdf(found.chiSquare, 1), 9)
  })
})

/** R. G. Miller, Survival Analysis, Wiley (data set aml of R's survival); output: that package's tests/doaml.Rout.save. */
describe('maintenance in acute myelogenous leukaemia', () => {
  const maintained = lifetimes('9 13 13+ 18 23 28+ 31 34 45+ 48 161+')
  const not = lifetimes('5 5 8 8 12 16+ 23 27 30 33 43 45')

  test('Kaplan-Meier and Greenwood, maintained', () => {
    expectTable(
      maintained,
      `9 11 1 0.909 0.0867
       13 10 1 0.818 0.1163
       18 8 1 0.716 0.1397
       23 7 1 0.614 0.1526
       31 5 1 0.491 0.1642
       34 4 1 0.368 0.1627
       48 2 1 0.184 0.1535`,
    )
  })

  test('Kaplan-Meier and Greenwood, not maintained', () => {
    expectTable(
      not,
      `5 12 2 0.8333 0.1076
       8 10 2 0.6667 0.1361
       12 8 1 0.5833 0.1423
       23 6 1 0.4861 0.1481
       27 5 1 0.3889 0.1470
       30 4 1 0.2917 0.1387
       33 3 1 0.1944 0.1219
       43 2 1 0.0972 0.0919
       45 1 1 0 -`,
    )
  })

  test('medians 31 and 23 weeks', () => {
    for (const [group, time] of [
      [maintained, 31],
      [not, 23],
    ] as const)
      expect(medianTime(kaplanMeier(group.times, group.events))).toMatchObject({ ok: true, value: { time } })
  })

  test('log-rank: observed 7 and 11, expected 10.69 and 7.31, χ² 3.4, p 0.07', () => {
    const found = answered([maintained, not])
    expect(found.observed).toEqual([7, 11])
    printedAs(found.expected[0]!, '10.69')
    printedAs(found.expected[1]!, '7.31')
    printedAs(found.chiSquare, '3.4')
    printedAs(found.pValue, '0.07')
  })
})

/**
 * Disease-free days of 137 bone-marrow transplants in three groups: J. P. Klein & M. L. Moeschberger, Survival
 * Analysis, 1997, Appendix D. Data as in the SAS/STAT sample library (data set BMT). The printed results are of the
 * SAS/STAT User's Guide, The LIFETEST Procedure, from memory.
 */
describe('bone-marrow transplants: three groups', () => {
  const lymphoblastic = lifetimes(
    `2081+ 1602+ 1496+ 1462+ 1433+ 1377+ 1330+ 996+ 226+ 1199+ 1111+ 530+ 1182+ 1167+ 418 383 276 104 609 172 487
     662 194 230 526 122 129 74 122 86 466 192 109 55 1 107 110 332`,
  )
  const lowRisk = lifetimes(
    `2569+ 2506+ 2409+ 2218+ 1857+ 1829+ 1562+ 1470+ 1363+ 1030+ 860+ 1258+ 2246+ 1870+ 1799+ 1709+ 1674+ 1568+
     1527+ 1324+ 957+ 932+ 847+ 848+ 1850+ 1843+ 1535+ 1447+ 1384+ 414 2204 1063 481 105 641 390 288 421 79 748 486
     48 272 1074 381 10 53 80 35 248 704 211 219 606`,
  )
  const highRisk = lifetimes(
    `2640+ 2430+ 2252+ 2140+ 2133+ 1238+ 1631+ 2024+ 1345+ 1136+ 845+ 422 162 84 100 2 47 242 456 268 318 32 467 47
     390 183 105 115 164 93 120 80 677 64 168 74 16 157 625 48 273 63 76 113 363`,
  )

  test('the groups are of 38, 54 and 45 patients', () => {
    expect([lymphoblastic, lowRisk, highRisk].map(({ times }) => times.length)).toEqual([38, 54, 45])
  })

  test('log-rank χ² 13.8037 on 2 degrees of freedom, p 0.0010', () => {
    const found = answered([lymphoblastic, lowRisk, highRisk])
    expect(found.degreesOfFreedom).toBe(2)
    printedAs(found.chiSquare, '13.8037')
    printedAs(found.pValue, '0.0010')
    // On two degrees of freedom the tail is exp(−χ²/2) exactly.
    expect(found.pValue).toBeCloseTo(Math.exp(-found.chiSquare / 2), 12)
  })

  test('median of the first group 418 days, interval on the log(−log) scale from 192 to not reached', () => {
    expect(medianTime(kaplanMeier(lymphoblastic.times, lymphoblastic.events))).toEqual({
      ok: true,
      value: { time: 418, interval: [192, 'not reached'] },
    })
  })
})
