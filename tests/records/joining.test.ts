import { describe, expect, test } from 'vitest'
import type { Lookup } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { sampleIds as ids, sampleRecords } from './samples'

const low = sampleRecords.find(({ id }) => id === ids.low)!

describe('joining two positions', () => {
  const twin = '01920000-0000-7000-8000-0000000000f0'
  /** A range that was joined to the one of the position that is kept. */
  const joinedRange = '01920000-0000-7000-8000-0000000000f1'
  const lookup = (twinBody: Record<string, unknown>): Lookup =>
    Object.assign((id: string) => (id === twin ? { kind: 'position', body: twinBody } : low), {
      endedAt: () => undefined,
      keptId: (id: string) => (id === joinedRange ? ids.range : id),
    })
  const saying = { id: 'person-1', role: 'technician', saidAt: '2026-01-30T08:00:00.000Z' } as const
  const joined = (difference: Record<string, unknown>) =>
    recordKinds['same as']!.refusedBy!(
      { kept: ids.low, duplicate: twin, reason: 'Entered twice.' },
      lookup({ ...low.body, ...difference }),
      saying,
    )

  test('those that agree in all that a rating needs are joined, whatever they are called', () => {
    expect(joined({ name: 'LOW', note: 'By the drain.' })).toBeUndefined()
  })

  test('those of two ranges that were joined themselves are joined', () => {
    expect(joined({ rangeId: joinedRange })).toBeUndefined()
  })

  test.each([
    [{ stage: 'high fire' }, 'the stage (low fire, high fire)'],
    [{ kind: 'two-port' }, 'the kind of switch (one-port, two-port)'],
    [{ between: 'two ports' }, 'the points between which the pressure acts (port and room, two ports)'],
    [{ tap: 'vent side' }, 'where the hose ends (collector box, vent side)'],
    [{ tap: 'not stated' }, 'where the hose ends (collector box, not stated)'],
    [{ sense: 'pressure' }, 'suction or pressure (suction, pressure)'],
    [{ rangeId: ids.high }, 'the furnace range'],
  ])('those that differ in %j are refused, and told in what', (difference, words) => {
    const refusal = joined(difference)
    expect(refusal?.rule).toBe('only like joins like')
    expect(refusal?.sentence).toContain(`These positions differ in ${words}.`)
  })

  test('everything that differs is named at once', () => {
    expect(joined({ tap: 'vent side', sense: 'pressure' })?.sentence).toContain(
      'differ in where the hose ends (collector box, vent side), and in suction or pressure (suction, pressure).',
    )
  })
})
