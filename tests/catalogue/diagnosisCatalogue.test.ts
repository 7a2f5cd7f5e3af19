import { describe, expect, test } from 'vitest'
import { causes, confirmMinutes } from '@/lib/catalogue/causes'
import { checkMinutes, checks } from '@/lib/catalogue/checks'
import { diagnosisCatalogue } from '@/lib/catalogue/diagnosisCatalogue'
import { type CatalogueObservations, findings } from '@/lib/catalogue/findings'
import {
  checkCatalogue,
  type Observations,
  packCases,
  rankCauses,
  repairOrder,
  suggestChecks,
  unlistedCause,
} from '@/lib/core/diagnosis'
import { pairsOf, tradeTable } from './tradeTable'

const cases = packCases(diagnosisCatalogue, [])
const rank = (observed: Observations) =>
  rankCauses({ catalogue: diagnosisCatalogue, cases, observed, settings: { replicates: 0 } })
const placeOf = (cause: string, observed: Observations) =>
  rank(observed).findIndex((one) => one.cause === cause) + 1

type Part = 'raises' | 'signature' | 'byItsName'

/** What speaks for a cause, the first value named where a finding has several. */
const speakingFor = (cause: string, parts: readonly Part[]): Record<string, string> =>
  Object.fromEntries(
    parts
      .flatMap((part) => pairsOf(cause, tradeTable[cause]?.[part]))
      .toReversed()
      .map(({ finding, value }) => [finding, value]),
  )

const notFirst = (parts: readonly Part[]) =>
  causes.flatMap(({ id }) => {
    const place = placeOf(id, speakingFor(id, parts))
    return place === 1 ? [] : [`${id}: ${place}`]
  })

describe('diagnosisCatalogue', () => {
  test('is one that the core can work on, with all causes, findings and checks', () => {
    expect(() => checkCatalogue(diagnosisCatalogue)).not.toThrow()
    expect(diagnosisCatalogue).toMatchObject({ causes, findings, checks })
    expect(diagnosisCatalogue.context?.map(({ id }) => id)).toEqual([
      'furnace',
      'model range',
      'fuel',
      'venting',
    ])
  })

  test('with nothing observed, every cause has its base rate', () => {
    for (const { cause, probability } of rank({}))
      expect(probability).toBeCloseTo(
        cause === unlistedCause ? 0.05 : 0.95 * (causes.find(({ id }) => id === cause)?.prior ?? Number.NaN),
        12,
      )
  })

  test('with no history, everything that speaks for a cause puts it first, but for one', () => {
    // Volts lost across the contact and chatter: a bad connection is four times as frequent and is looked at first.
    expect(notFirst(['raises', 'signature', 'byItsName'])).toEqual(['contacts-resistive: 2'])
    const lost = speakingFor('contacts-resistive', ['raises', 'signature'])
    expect(rank({ ...lost, 'switch-wiring': 'sound' })[0]?.cause).toBe('contacts-resistive')
  })

  test('its symptoms alone put it first as well, but for two that have few of their own', () => {
    // That a reading changes with the door is all the trade lists for a leaking cabinet; the gap has to be found.
    expect(notFirst(['raises'])).toEqual(['cabinet-leak: 20', 'contacts-resistive: 2'])
    const gap = { 'reading-with-door-off': 'lower', 'gap-in-door-or-box-seal': 'seen' }
    expect(rank(gap)[0]?.cause).toBe('cabinet-leak')
  })

  test('each danger that one cause explains leads to it', () => {
    expect(rank({ 'jumper-or-bypass': 'seen' })[0]?.cause).toBe('switch-bypassed')
    expect(rank({ 'switch-closed-at-rest': 'seen', 'jumper-or-bypass': 'ruled out' })[0]?.cause).toBe(
      'switch-stuck-closed',
    )
    expect(rank({ 'cracked-heat-exchanger': 'seen' })[0]?.cause).toBe('primary-exchanger-cracked')
  })

  test('what was on arrival, and what empties a house, changes nothing', () => {
    const observed: CatalogueObservations = { trap: 'sludge in it', 'drops-out': 'after 5 to 20 minutes' }
    for (const context of [
      'locked-out-on-arrival',
      'self-cleared-lock-out',
      'running-on-arrival',
      'smell-of-gas',
      'co-alarm-sounding',
      'anyone-unwell',
    ])
      for (const value of ['seen', 'ruled out'])
        expect(rank({ ...observed, [context]: value })).toEqual(rank(observed))
  })

  test('what is ruled out counts, and not checked is not ruled out', () => {
    const chance = (observed: Observations) =>
      rank(observed).find(({ cause }) => cause === 'water-in-hose-or-switch')?.probability ?? Number.NaN
    expect(chance({ 'water-in-hose': 'ruled out' })).toBeLessThan(chance({}) / 5)
    expect(chance({ 'water-in-hose': 'not checked' })).toBe(chance({}))
  })

  test('a furnace that does not condense leaves no drain to blame', () => {
    const drained = rank({ 'furnace-kind': 'not condensing', 'drops-out': 'after 5 to 20 minutes' })
    expect(
      drained.slice(0, 5).map(({ cause }) => causes.find(({ id }) => id === cause)?.group),
    ).not.toContain('condensate drainage')
  })

  test('the checklist names every cause once, in the order in which the work comes to their tests', () => {
    const { checklist = [] } = diagnosisCatalogue
    expect(checklist.toSorted()).toEqual(causes.map(({ id }) => id).toSorted())
    const comesFirst = (one: string, other: string) =>
      expect(checklist.indexOf(one), `${one} before ${other}`).toBeLessThan(checklist.indexOf(other))
    comesFirst('switch-bypassed', 'vent-end-blocked')
    comesFirst('vent-end-blocked', 'trap-plugged')
    comesFirst('hose-off-or-leaking', 'inducer-motor-slow')
    comesFirst('inducer-motor-slow', 'primary-exchanger-cracked')
    for (const id of checklist.slice(0, -1)) comesFirst(id, 'switch-drifted-or-leaking')
  })
})

describe('the catalogue with the core', () => {
  test('suggestChecks has minutes for every check, dangers first, looks before tools, the hand pump among the last', () => {
    const planned = suggestChecks({
      ranked: rank({}),
      catalogue: diagnosisCatalogue,
      observed: {},
      costs: checkMinutes,
    })
    expect(planned).toHaveLength(checks.length)
    const dangers = checks.filter(({ danger }) => danger).map(({ id }) => id)
    expect(
      planned
        .slice(0, dangers.length)
        .map(({ check }) => check)
        .toSorted(),
    ).toEqual(dangers.toSorted())
    expect(planned.slice(-6).map(({ check }) => check)).toContain('hand-pump-the-switch')
    for (const { expectedBits } of planned) expect(expectedBits).toBeGreaterThanOrEqual(0)
  })

  test('a cold reading that is too low makes the next looks those of the air path', () => {
    const observed: CatalogueObservations = { 'reading-at-start': 'too low from the start' }
    const groups = rank(observed)
      .slice(0, 5)
      .map(({ cause }) => causes.find(({ id }) => id === cause)?.group)
    expect(groups).not.toContain('the switch itself')
    expect(groups).not.toContain('electrical and control')
  })

  test('repairOrder has the minutes of every cause’s test', () => {
    const { order, expectedMinutes } = repairOrder({ ranked: rank({}), costs: confirmMinutes })
    expect(order.toSorted()).toEqual(causes.map(({ id }) => id).toSorted())
    expect(expectedMinutes).toBeGreaterThan(0)
    const dangers = causes.filter(({ danger }) => danger).length
    expect(order.slice(0, dangers).every((id) => causes.find((cause) => cause.id === id)?.danger)).toBe(true)
  })
})
