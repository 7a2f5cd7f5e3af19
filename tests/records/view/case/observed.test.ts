import { describe, expect, test } from 'vitest'
import { diagnosisCatalogue } from '@/lib/catalogue/diagnosisCatalogue'
import { observationsOnList, readableFinding } from '@/lib/catalogue/findings/readableFinding'
import { rankCauses } from '@/lib/core/diagnosis'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { at, finding, hot, ids, inches, opened, reading, said, team, viewOf, withdrawn } from './team'

const observed = (...records: HeldRecord[]) => viewOf(team(opened, records)).observed

describe('what is observed in a case', () => {
  test('the newest value of each finding, whatever order the records arrived in', () => {
    const first = finding('trap', 'holds water, clear', '09:10')
    const second = finding('trap', 'sludge in it', '09:20')
    expect(observed(second, first)).toEqual({ trap: 'sludge in it' })
  })

  test('taking a finding back leaves what was said before it; with nothing before it, it is not checked', () => {
    const first = finding('trap', 'holds water, clear', '09:10')
    const second = finding('trap', 'sludge in it', '09:20')
    expect(observed(first, second, withdrawn(second))).toEqual({ trap: 'holds water, clear' })
    expect(observed(first, withdrawn(first))).toEqual({})
  })

  test('what the readings show by themselves', () => {
    expect(observed(reading(0.3))).toMatchObject({ 'reading-at-start': 'too low from the start' })
    expect(observed(reading(0.9))).toMatchObject({ 'open-beyond-make': 'seen' })
    expect(observed(reading(0.9, { movement: 'a beat of one to three seconds' }))).toMatchObject({
      'regular-pulse': 'seen',
    })
  })

  test('a pair of readings shows what changed between them', () => {
    const opened = reading(0.6, { situation: 'vent opened' }, { at: at(12, '09:40') })
    expect(observed(reading(0.3), opened)).toMatchObject({ 'recovers-with-vent-opened': 'seen' })
  })

  test('what is left at rest is said only of a gauge that was zeroed', () => {
    const rest = { phase: 'rest', secondsWatched: undefined }
    expect(observed(reading(0.05, rest))).toEqual({ 'no-return-to-zero': 'seen' })
    expect(observed(reading(0.05, { ...rest, zeroed: false }))).toEqual({})
  })

  test('readings after a repair describe another furnace', () => {
    expect(observed(hot(0.3))).toEqual({})
  })

  test('what somebody tapped outweighs what a reading seems to say', () => {
    const tapped = finding('open-beyond-make', 'ruled out')
    expect(observed(reading(0.9), tapped)['open-beyond-make']).toBe('ruled out')
  })

  test('each port of a two-port switch is held against the baseline of that port', () => {
    const port = (which: string, value: number, more: Record<string, unknown> = {}, when?: string) =>
      reading(
        value,
        {
          kind: 'two-port',
          situation: `${which} port to the room`,
          tap: which === 'first' ? 'burner box' : 'collector box',
          against: undefined,
          ...more,
        },
        { at: when ?? at(12, '09:30') },
      )
    const healthy = (which: string, value: number) => {
      const one = port(which, value, { caseId: undefined, visitId: undefined }, at(2))
      return [
        one,
        said(
          'baseline',
          { furnaceId: ids.furnace, readingId: one.id, occasion: 'annual service', on: '2026-01-02' },
          { at: at(2) },
        ),
      ]
    }
    const known = [...healthy('first', 0.4), ...healthy('second', 0.9)]
    expect(observed(...known, port('first', 0.2), port('second', 0.7))).toEqual({
      'ports-to-the-room': 'both nearer zero',
    })
    expect(observed(...known, port('first', 0.6), port('second', 1.1))).toEqual({
      'ports-to-the-room': 'both farther from zero',
    })
    expect(observed(port('first', 0.2), port('second', 0.7))).toEqual({})
  })
})

describe('a finding that the catalogue has retired since', () => {
  /** Put in the log when the catalogue still knew it, so no rule of today is asked. */
  const retired = {
    ...finding('trap', 'holds water, clear'),
    body: { ...finding('trap', 'holds water, clear').body, finding: 'colour-of-the-cabinet', value: 'green' },
  }

  test('stays in the case as it was said, and can still be named', () => {
    expect(observed(retired)).toEqual({ 'colour-of-the-cabinet': 'green' })
    const old = { 'colour-of-the-cabinet': { name: 'Colour of the cabinet', values: ['green', 'blue'] } }
    expect(readableFinding('colour-of-the-cabinet', old)).toEqual({
      name: 'Colour of the cabinet',
      values: ['green', 'blue'],
      retired: true,
    })
  })

  test('is left out of the ranking, which still works', () => {
    const all = observationsOnList(observed(retired, finding('trap', 'holds water, clear')))
    expect(all).toEqual({ trap: 'holds water, clear' })
    const ranked = rankCauses({ catalogue: diagnosisCatalogue, cases: [], observed: all })
    expect(ranked.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9)
  })
})

test('samples are read in pascals', () => {
  expect(reading(1).body.samples).toEqual([inches(1), inches(1), inches(1)])
  // 1 in. of water is 249.08891 Pa (NIST SP 811, App. B.8).
  expect(inches(1)).toBeCloseTo(249.08891, 5)
})
