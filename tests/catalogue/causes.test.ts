import { describe, expect, test } from 'vitest'
import { type CauseGroup, causeById, causeGroups, causes, confirmMinutes } from '@/lib/catalogue/causes'
import { shareOfGroup, weightOf } from '@/lib/catalogue/causes/baseRates'
import { findingById } from '@/lib/catalogue/findings'
import { workStates } from '@/lib/catalogue/workState'

const shareOf = (...groups: CauseGroup[]) =>
  causes.filter(({ group }) => groups.includes(group)).reduce((sum, { prior }) => sum + prior, 0)

/** The trade's ranges for each group, per cent. Common practice, no published source. */
const ranges: [CauseGroup[], number, number][] = [
  [['condensate drainage'], 25, 30],
  [['vent path'], 20, 25],
  [['hose and port'], 12, 18],
  [['inducer'], 12, 15],
  [['electrical and control'], 8, 10],
  [['combustion-air path'], 5, 8],
  [['the switch itself'], 5, 8],
  [['heat exchanger'], 2, 4],
  [['installation', 'elevation'], 3, 5],
]

/** How often each is met, and the causes that ask for shutting down: typed from the trade's own list. */
const common =
  'vent-end-blocked, water-in-vent-sag, intake-blocked, trap-plugged, drain-line-blocked, pump-or-shared-drain, inducer-motor-slow, port-plugged, hose-off-or-leaking, water-in-hose-or-switch, connection-bad, string-open-elsewhere'
const rare =
  'vent-obstructed-or-apart, wrong-inducer, primary-exchanger-cracked, primary-exchanger-sooted, elevation-kit-missing, elevation-kit-not-called-for, switch-stuck-closed, switch-bypassed'
const dangerous =
  'vent-obstructed-or-apart, primary-exchanger-cracked, primary-exchanger-sooted, elevation-kit-not-called-for, switch-stuck-closed, switch-bypassed'

describe('causes', () => {
  test('there are forty of them in ten groups, each under an id and a name of its own', () => {
    expect(causes).toHaveLength(40)
    expect([...new Set(causes.map(({ group }) => group))]).toEqual([...causeGroups])
    expect(causeGroups).toHaveLength(10)
    expect(new Set(causes.map(({ id }) => id)).size).toBe(40)
    expect(new Set(causes.map(({ name }) => name)).size).toBe(40)
    for (const cause of causes) {
      expect(cause.id).toMatch(/^[a-z]{2,}(-[a-z]+)*$/)
      expect(causeById(cause.id)).toBe(cause)
    }
    expect(causeById('toString')).toBeUndefined()
  })

  test('the groups have the shares that the trade gives them, together 1', () => {
    expect(causes.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 12)
    for (const [groups, from, to] of ranges) {
      expect(shareOf(...groups) * 100, groups.join()).toBeGreaterThanOrEqual(from - 1e-9)
      expect(shareOf(...groups) * 100, groups.join()).toBeLessThanOrEqual(to + 1e-9)
    }
  })

  test('within a group the share goes by how often each is met: common four times rare, occasional twice', () => {
    expect(weightOf).toEqual({ common: 4, occasional: 2, rare: 1 })
    const seen = (how: string) => causes.filter((cause) => cause.seen === how).map(({ id }) => id)
    expect(seen('common').join(', ')).toBe(common)
    expect(seen('rare').join(', ')).toBe(rare)
    // Vent path: common 4 + 4, occasional 2 + 2 + 2, rare 1, together 15.
    expect(causeById('vent-end-blocked')?.prior).toBeCloseTo((0.21 * 4) / 15, 12)
    expect(causeById('vent-obstructed-or-apart')?.prior).toBeCloseTo(0.21 / 15, 12)
    expect(shareOfGroup['vent path']).toBe(0.21)
  })

  test('those that ask for shutting down are dangers, and say so', () => {
    expect(
      causes
        .filter(({ danger }) => danger)
        .map(({ id }) => id)
        .join(', '),
    ).toBe(dangerous)
    for (const { danger, hazards } of causes)
      if (danger) expect(hazards.join(' ')).toMatch(/shut down|unsafe/i)
  })

  test.each(causes)(
    '$id has a mechanism, a confirming test, a fix, what brings it back, hazards and a source',
    (cause) => {
      for (const sentence of [cause.mechanism, cause.confirm.what, cause.fix.what, cause.comesBack]) {
        expect(sentence).toMatch(/^[A-Z“].*\.$/)
        expect(sentence.length).toBeLessThanOrEqual(190)
      }
      expect(cause.mechanism.match(/\.(?= |$)/g)).toHaveLength(1)
      expect(workStates).toContain(cause.confirm.state)
      expect(confirmMinutes[cause.id]).toBe(cause.confirm.minutes)
      expect(cause.confirm.minutes).toBeGreaterThan(0)
      expect(cause.fix.minutes[0]).toBeGreaterThan(0)
      expect(cause.fix.minutes[1]).toBeGreaterThanOrEqual(cause.fix.minutes[0])
      expect(cause.hazards.length).toBeGreaterThan(0)
      expect(cause.source.length).toBeGreaterThan(10)
    },
  )

  test.each(causes)('$id is told from the others by at least three findings', ({ likelihoods = {} }) => {
    const telling = Object.entries(likelihoods).filter(([id, chances]) => {
      const usual = findingById(id)?.usual ?? {}
      return Object.entries(chances).some(([value, chance]) => Math.abs(chance - (usual[value] ?? 0)) > 0.05)
    })
    expect(telling.length).toBeGreaterThanOrEqual(3)
  })

  test('no two causes look alike: some finding has other chances', () => {
    const chances = (cause: (typeof causes)[number]) => (id: string) =>
      cause.likelihoods?.[id] ?? findingById(id)?.usual ?? {}
    for (const one of causes)
      for (const other of causes) {
        if (one.id >= other.id) continue
        const named = [...Object.keys(one.likelihoods ?? {}), ...Object.keys(other.likelihoods ?? {})]
        const farthest = Math.max(
          ...named.flatMap((id) =>
            Object.keys(chances(one)(id)).map((value) =>
              Math.abs((chances(one)(id)[value] ?? 0) - (chances(other)(id)[value] ?? 0)),
            ),
          ),
        )
        expect(farthest, `${one.id} and ${other.id}`).toBeGreaterThan(0.2)
      }
  })
})
