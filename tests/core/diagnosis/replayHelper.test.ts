import { describe, expect, test } from 'vitest'
import {
  brierScore,
  type Catalogue,
  type NamedCause,
  type PastCase,
  type RankingSettings,
  type ReplayCase,
  type ReplaySettings,
  rankCauses,
  replayHelper,
  replayHelperInSteps,
  unlistedCause,
} from '@/lib/core/diagnosis'
import { seededRandom } from '@/lib/core/seeded'
import { deepFreeze } from './anyDiagnosis'

const day = 24 * 60 * 60 * 1000
const values = ['seen', 'ruled out']
const chances = (seen: number) => ({ seen, 'ruled out': 1 - seen })
const catalogue = deepFreeze<Catalogue>({
  causes: [
    { id: 'ice', prior: 2, likelihoods: { drip: chances(0.2), hum: chances(0.3), frost: chances(0.9) } },
    { id: 'sludge', prior: 3, likelihoods: { drip: chances(0.9), hum: chances(0.4), frost: chances(0.2) } },
    { id: 'motor', prior: 1, likelihoods: { drip: chances(0.3), hum: chances(0.9), frost: chances(0.2) } },
  ],
  findings: ['drip', 'hum', 'frost'].map((id) => ({ id, values })),
  context: [{ id: 'house', weight: 0.2 }],
  checklist: ['motor', 'ice', 'sludge'],
})

/** An invented history over four winters: late, corrected and withdrawn statements, and causes nobody listed. */
function history(howMany: number, seed: number): ReplayCase[] {
  const random = seededRandom(seed)
  const pick = <T>(list: readonly T[]) => list[Math.floor(random() * list.length)]!
  return Array.from({ length: howMany }, (_, at) => {
    const winter = Math.floor((at * 4) / howMany)
    const openedAt = Date.UTC(2019 + winter, 9, 1) + Math.floor(random() * 150) * day
    const main = pick(['ice', 'sludge', 'sludge', 'motor', 'lightning'])
    const shown = catalogue.causes.find(({ id }) => id === main)?.likelihoods
    const findings = ['drip', 'hum', 'frost'].flatMap((finding) => {
      if (random() < 0.25) return []
      const saidAt = openedAt + Math.floor(random() * 3) * day
      const value = random() < (shown?.[finding]?.seen ?? 0.5) ? 'seen' : 'ruled out'
      return [{ finding, value, saidAt, receivedAt: saidAt + Math.floor(random() * 40) * day }]
    })
    const saidAt = openedAt + day + Math.floor(random() * 2 * day)
    const said = (says: NamedCause | 'withdrawn', later: number) => ({
      says,
      saidAt: saidAt + later * day,
      receivedAt: saidAt + later * day + Math.floor(random() * 20) * day,
    })
    const causes = [said({ main, status: 'presumed' }, 0)]
    if (random() < 0.8) causes.push(said({ main, status: pick(['confirmed', 'durable'] as const) }, 30))
    if (random() < 0.1) causes.push(said('withdrawn', 60))
    if (random() < 0.1) causes.push(said({ main: pick(['ice', 'motor']), status: 'confirmed' }, 90))
    return { id: `case ${at}`, openedAt, context: { house: `house ${at % 9}` }, findings, causes }
  })
}

const tried: ReplaySettings['try'] = {
  neighbours: [5, Infinity],
  priorStrength: [2, 20],
  findingStrength: [1, 8],
}
const cases = deepFreeze(history(80, 4))
const settings = { try: tried }
const replayed = (some: readonly ReplayCase[], more: Partial<ReplaySettings> = {}) => {
  const result = replayHelper({ catalogue, cases: some, settings: { ...settings, ...more } })
  if (!result.ok) throw new Error(result.problem.message)
  return result.value
}
const record = replayed(cases)
const caseOf = (id: string) => cases.find((one) => one.id === id)!

/** What a person with the log in hand on that day would have known of the other cases. */
function knownOn(moment: number, except: string): PastCase[] {
  return cases
    .filter(({ id, openedAt }) => id !== except && openedAt < moment)
    .map(({ id, context, findings, causes }) => {
      const received = findings.filter(({ receivedAt }) => receivedAt < moment)
      const last = causes
        .filter(({ receivedAt }) => receivedAt < moment)
        .toSorted((a, b) => a.saidAt - b.saidAt)
        .at(-1)
      return {
        id,
        context,
        findings: Object.fromEntries(received.map(({ finding, value }) => [finding, value])),
        cause: last === undefined || last.says === 'withdrawn' ? undefined : last.says,
      }
    })
}

function foundBefore({ findings, causes }: ReplayCase) {
  const named = Math.min(...causes.map(({ saidAt }) => saidAt))
  return Object.fromEntries(
    findings.filter(({ saidAt }) => saidAt < named).map(({ finding, value }) => [finding, value]),
  )
}

const rankedOn = (one: ReplayCase, ranking: Partial<RankingSettings>) =>
  rankCauses({
    catalogue,
    cases: knownOn(one.openedAt, one.id),
    observed: foundBefore(one),
    context: one.context,
    settings: { replicates: 0, ...ranking },
  })
const chanceOn = (one: ReplayCase, truth: string, ranking: Partial<RankingSettings>) =>
  rankedOn(one, ranking).find(({ cause }) => cause === truth)!.probability
const listedName = ({ main }: NamedCause) =>
  catalogue.causes.some(({ id }) => id === main) ? main : unlistedCause

describe('replayHelper({ catalogue, cases, settings })', () => {
  test('each forecast is the ranking that what was received before the case was opened gives', () => {
    expect(record.forecasts.length).toBeGreaterThan(25)
    for (const { caseId, winter, truth, probabilityOfTruth } of record.forecasts) {
      const { winter: _, ...chosen } = record.winters.find((one) => one.winter === winter)!
      expect(probabilityOfTruth).toBeCloseTo(chanceOn(caseOf(caseId), truth, chosen), 11)
    }
  })

  test('nothing received on or after the opening changes a forecast: cutting it all away leaves it as it was', () => {
    for (const { caseId, probabilityOfTruth } of record.forecasts.filter((_, at) => at % 4 === 0)) {
      const target = caseOf(caseId)
      const soFar = <T extends { receivedAt: number }>(said: readonly T[]) =>
        said.filter(({ receivedAt }) => receivedAt < target.openedAt)
      const cut = cases
        .filter(({ openedAt }) => openedAt < target.openedAt)
        .map((one) => ({ ...one, findings: soFar(one.findings), causes: soFar(one.causes) }))
      const again = replayed([...cut, target]).forecasts.find((one) => one.caseId === caseId)
      expect(again?.probabilityOfTruth).toBe(probabilityOfTruth)
    }
  })

  test('a finding said when the cause was already named does not help its own forecast', () => {
    const { caseId, probabilityOfTruth } = record.forecasts.at(-1)!
    const told = cases.map((one) => {
      if (one.id !== caseId) return one
      const named = Math.min(...one.causes.map(({ saidAt }) => saidAt))
      const late = catalogue.findings.map(({ id }) => ({
        finding: id,
        value: 'seen',
        saidAt: named,
        receivedAt: named,
      }))
      return { ...one, findings: [...one.findings, ...late] }
    })
    const again = replayed(told).forecasts.find((one) => one.caseId === caseId)
    expect(again!.probabilityOfTruth).toBe(probabilityOfTruth)
  })

  test('k, A and m are those that lost least over the winters before, on the causes known when the winter began', () => {
    const tunings = tried.neighbours.flatMap((neighbours) =>
      tried.priorStrength.flatMap((priorStrength) =>
        tried.findingStrength.map((findingStrength) => ({ neighbours, priorStrength, findingStrength })),
      ),
    )
    expect(record.winters.map(({ winter }) => winter)).toEqual([2020, 2021, 2022])
    for (const { winter, ...chosen } of record.winters) {
      const began = Date.UTC(winter, 6, 1)
      const known = cases.flatMap((one) => {
        const last = one.causes
          .filter(({ receivedAt }) => receivedAt < began)
          .toSorted((a, b) => a.saidAt - b.saidAt)
          .at(-1)
        if (one.openedAt >= began || last === undefined || last.says === 'withdrawn') return []
        return last.says.status === 'presumed' ? [] : [{ one, truth: listedName(last.says) }]
      })
      const losses = tunings.map((tuning) =>
        known.reduce((sum, { one, truth }) => sum - Math.log(chanceOn(one, truth, tuning)), 0),
      )
      expect(chosen).toEqual(tunings[losses.indexOf(Math.min(...losses))])
    }
  })

  test('only cases that are confirmed or durable by all that was ever received are scored, under the cause they have then', () => {
    const expected = cases
      .filter(({ openedAt }) => openedAt >= Date.UTC(2020, 6, 1))
      .flatMap(({ id, causes }) => {
        const last = causes.toSorted((a, b) => a.saidAt - b.saidAt).at(-1)!
        if (last.says === 'withdrawn' || last.says.status === 'presumed') return []
        return [[id, listedName(last.says)]]
      })
    expect(record.forecasts.map(({ caseId, truth }) => [caseId, truth]).sort()).toEqual(expected.sort())
    expect(record.forecasts.some(({ truth }) => truth === unlistedCause)).toBe(true)
  })

  test('the scores are those of the forecasts, and of both baselines for the same cases', () => {
    const n = record.forecasts.length
    const loss = record.forecasts.reduce((sum, one) => sum - Math.log(one.probabilityOfTruth), 0) / n
    expect(record.helper.logLoss).toBeCloseTo(loss, 12)
    let base = 0
    let hits = 0
    const briers: number[] = []
    for (const { caseId, winter, truth } of record.forecasts) {
      const { winter: _, ...chosen } = record.winters.find((one) => one.winter === winter)!
      const one = caseOf(caseId)
      const ranked = rankedOn(one, chosen)
      hits += ranked.slice(0, 3).some(({ cause }) => cause === truth) ? 1 : 0
      const probabilities = ranked.map(({ probability }) => probability)
      briers.push(brierScore([{ probabilities, truth: ranked.findIndex(({ cause }) => cause === truth) }]))
      const rates = rankCauses({
        catalogue,
        cases: knownOn(one.openedAt, caseId),
        observed: {},
        settings: { ...chosen, neighbours: Infinity },
      })
      base -= Math.log(rates.find(({ cause }) => cause === truth)!.probability) / n
    }
    expect(record.helper.top3).toMatchObject({ hits, cases: n })
    expect(record.helper.brier).toBeCloseTo(briers.reduce((sum, one) => sum + one, 0) / n, 12)
    expect(record.baseRates.logLoss).toBeCloseTo(base, 11)
    expect(record.baseRates.cases).toBe(n)
    // The checklist's shares: 0.95 · (1, 1/2, 1/3) / (11/6), and 0.05 for what is not on it.
    const shares = {
      motor: (0.95 * 6) / 11,
      ice: (0.95 * 3) / 11,
      sludge: (0.95 * 2) / 11,
      [unlistedCause]: 0.05,
    }
    const checklist = record.forecasts.reduce(
      (sum, { truth }) => sum - Math.log(shares[truth as 'ice']) / n,
      0,
    )
    expect(record.checklist.logLoss).toBeCloseTo(checklist, 12)
    expect(record.checklist.top1.hits).toBe(record.forecasts.filter(({ truth }) => truth === 'motor').length)
  })

  test('findings that tell causes apart beat both baselines', () => {
    const { helper, baseRates, checklist } = replayed(history(400, 9))
    expect(helper.logLoss).toBeLessThan(baseRates.logLoss - helper.logLossStandardError)
    expect(helper.logLoss).toBeLessThan(checklist.logLoss - helper.logLossStandardError)
    expect(helper.reliability.reduce((sum, row) => sum + row.cases, 0)).toBe(helper.cases)
  })

  test('the order in which the cases come doesn’t matter', () => {
    expect(replayed(cases.toReversed())).toEqual(record)
  })

  test('a finding corrected later counts as it was last said, however late the first word arrives', () => {
    const correct = (value: string, saidAt: number, receivedAt: number) => ({
      finding: 'drip',
      value,
      saidAt,
      receivedAt,
    })
    const first = caseOf('case 0')
    const named = Date.UTC(2019, 9, 20)
    const causes = [{ says: { main: 'ice', status: 'confirmed' as const }, saidAt: named, receivedAt: named }]
    const told = (findings: ReplayCase['findings']) =>
      replayed([{ ...first, openedAt: named - 9 * day, findings, causes }, ...cases.slice(1)]).helper
    const corrected = [
      correct('seen', named - 5 * day, named + day),
      correct('ruled out', named - 4 * day, named),
    ]
    expect(told(corrected)).toEqual(told(corrected.slice(1)))
    expect(told(corrected)).not.toEqual(told(corrected.slice(0, 1)))
  })

  test('with one winter, or nothing confirmed before, there is no record, and it says why', () => {
    for (const some of [[], cases.filter(({ openedAt }) => openedAt < Date.UTC(2020, 6, 1))]) {
      const result = replayHelper({ catalogue, cases: some, settings })
      expect(result).toMatchObject({ ok: false, problem: { code: 'too-few-winters' } })
    }
    const presumed = cases.map((one) => ({ ...one, causes: one.causes.slice(0, 1) }))
    expect(replayHelper({ catalogue, cases: presumed, settings })).toMatchObject({ ok: false })
    expect(
      replayHelper({ catalogue, cases: presumed, settings: { ...settings, scored: ['presumed'] } }).ok,
    ).toBe(true)
  })

  test('south of the equator a winter’s year begins in January', () => {
    const south = replayed(cases, { winterStartsInMonth: 1 })
    expect(south.winters.map(({ winter }) => winter)).toEqual([2020, 2021, 2022, 2023])
  })

  test.each<[string, Partial<ReplaySettings>, readonly ReplayCase[], string]>([
    ['nothing to try', { try: { ...tried, neighbours: [] } }, cases, 'at least one value'],
    ['a setting out of range', { try: { ...tried, priorStrength: [0] } }, cases, 'priorStrength'],
    ['month 13', { winterStartsInMonth: 13 }, cases, 'month'],
    ['a case twice', {}, [...cases, cases[0]!], 'same id'],
    ['a time that is none', {}, [{ ...cases[0]!, openedAt: Number.NaN }], 'milliseconds'],
    [
      'a finding that is not there',
      {},
      [{ ...cases[0]!, findings: [{ finding: 'smell', value: 'seen', saidAt: 1, receivedAt: 2 }] }],
      'no finding smell',
    ],
  ])('throws at %s', (_, more, some, message) => {
    const ask = () => replayHelper({ catalogue, cases: some, settings: { ...settings, ...more } })
    expect(ask).toThrow(RangeError)
    expect(ask).toThrow(message)
  })
})

test('replayHelperInSteps(asked) says before each case how many it is through, and answers the same', () => {
  const steps = replayHelperInSteps({ catalogue, cases, settings })
  for (let through = 0; through < cases.length; through++)
    expect(steps.next()).toEqual({ done: false, value: { through, of: cases.length } })
  expect(steps.next()).toEqual({ done: true, value: replayHelper({ catalogue, cases, settings }) })
})

test('a forecast of the record says where each forecaster put the true cause: the hit rates are counted from it', () => {
  const { forecasts, helper, baseRates, checklist } = record
  const within = (whose: keyof (typeof forecasts)[number]['placeOfTruth'], places: number) =>
    forecasts.filter(({ placeOfTruth }) => placeOfTruth[whose] <= places).length
  for (const [whose, scores] of Object.entries({ helper, baseRates, checklist })) {
    const name = whose as 'helper' | 'baseRates' | 'checklist'
    expect([within(name, 1), within(name, 3)]).toEqual([scores.top1.hits, scores.top3.hits])
  }
  for (const { leading, truth, probabilityOfTruth, placeOfTruth } of forecasts) {
    expect(leading.probability).toBeGreaterThanOrEqual(probabilityOfTruth)
    expect(leading.cause === truth).toBe(placeOfTruth.helper === 1)
  }
})
