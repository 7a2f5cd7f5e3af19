import { describe, expect, test } from 'vitest'
import { type SwitchSwap, unjustifiedSwitchSwaps } from '@/lib/core/callbacks'
import { type Requirement, switchReplacement } from '@/lib/core/guard'
import { deepFreeze } from '../diagnosis/anyDiagnosis'
import { bare, complete } from '../guard/made'
import { at, caseOf, windowOf } from './made'

const of = (furnaceId: string) => ({ furnaceId })
const cases = [
  caseOf('came back', '2026-01-01', '2026-01-02', { ...of('furnace 1'), cause: 'switch drifted' }),
  caseOf('callback', '2026-01-20', '2026-01-21', { ...of('furnace 1'), cause: 'sagging vent' }),
  caseOf('quiet', '2026-01-03', '2026-01-04', of('furnace 2')),
  caseOf('young', '2026-02-20', '2026-02-21', of('furnace 3')),
  caseOf('below make', '2026-01-05', '2026-01-06', of('furnace 4')),
  caseOf('justified', '2026-01-07', '2026-01-08', of('furnace 5')),
  caseOf('still open', '2026-02-25', undefined, of('furnace 6')),
]
const swap = (caseId: string, missing: Requirement[], reading: SwitchSwap['reading'] = 'none'): SwitchSwap =>
  deepFreeze({ caseId, missing, reading })
const flagged = (swaps: readonly SwitchSwap[]) =>
  unjustifiedSwitchSwaps({ swaps, cases, window: windowOf(), now: at('2026-03-01') })

// The list is a report of common practice, no published source.
describe('unjustifiedSwitchSwaps({ swaps, cases, window, now })', () => {
  test('what was missing, and what happened: came back with which cause, quiet, too early to say, not counted while nobody ended it', () => {
    const flags = flagged([
      swap('came back', ['rating-trusted', 'hose-clear']),
      swap('quiet', ['contact-open-at-that-moment']),
      swap('young', ['gauge-zeroed']),
      swap('still open', ['port-clear']),
    ])
    expect(Object.fromEntries(flags.map(({ caseId, afterwards }) => [caseId, afterwards]))).toEqual({
      'came back': {
        became: 'came back',
        laterId: 'callback',
        jobEndedAt: at('2026-01-02'),
        backAt: at('2026-01-20'),
        days: 18,
        laterCause: 'sagging vent',
      },
      quiet: { became: 'quiet' },
      young: { became: 'not known yet', windowEndsAt: at('2026-03-23') },
      'still open': { became: 'not counted' },
    })
    expect(flags.find(({ caseId }) => caseId === 'came back')).toMatchObject({
      furnaceId: 'furnace 1',
      missing: ['rating-trusted', 'hose-clear'],
    })
  })

  test('with the guard’s own answers: bare records are flagged with what it lists, complete ones are not', () => {
    const { missing } = switchReplacement(bare('will not close'))
    const flags = flagged([
      swap('quiet', missing),
      swap('justified', switchReplacement(complete()).missing, 'enough to close it'),
    ])
    expect(flags).toMatchObject([{ caseId: 'quiet', missing }])
    expect(missing.length).toBeGreaterThan(10)
  })

  test('swapped while the reading was too low to close any sound switch: almost certainly wrong, and listed first', () => {
    const flags = flagged([
      swap('young', ['gauge-zeroed'], 'too close to call'),
      swap('came back', ['hose-clear'], 'enough to close it'),
      swap('below make', ['reading-clears-the-limit'], 'too low to close it'),
      swap('quiet', ['hose-clear']),
    ])
    expect(flags.map(({ caseId, almostCertainlyWrong }) => [caseId, almostCertainlyWrong])).toEqual([
      ['below make', true],
      ['came back', false],
      ['young', false],
      ['quiet', false],
    ])
  })

  test('the order in which swaps and cases are given does not matter, and nothing is changed', () => {
    const swaps = deepFreeze([
      swap('quiet', ['hose-clear']),
      swap('young', ['hose-clear']),
      swap('came back', ['hose-clear']),
    ])
    const backwards = unjustifiedSwitchSwaps({
      swaps: swaps.toReversed(),
      cases: cases.toReversed(),
      window: windowOf(),
      now: at('2026-03-01'),
    })
    expect(backwards).toEqual(flagged(swaps))
  })

  test('a swap of a case that is not given, or two of one case: RangeError', () => {
    expect(() => flagged([swap('unheard of', ['hose-clear'])])).toThrow(
      new RangeError('Every replacement of a switch must be of a case that is given'),
    )
    expect(() => flagged([swap('quiet', []), swap('quiet', ['hose-clear'])])).toThrow(
      new RangeError('Replacements of a switch must be given once for each case'),
    )
  })
})
