import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type CallbackCase, type CallbackWindow, type Ending, repeatsOf } from '@/lib/core/callbacks'
import { anyCases, anyWindow, caseOf, windowOf } from './made'

// What counts as a callback is common practice, no published source.
const settings = { seed: 20260412, numRuns: 200 }
const window = windowOf()
const pairs = (cases: readonly CallbackCase[], within: CallbackWindow = window) =>
  repeatsOf(cases, within).map(({ earlierId, laterId }) => `${earlierId} → ${laterId}`)

describe('repeatsOf(cases, window)', () => {
  test('fixed 2 January, a new case on the proving circuit 20 January: a callback after 18 days', () => {
    const cases = [
      caseOf('A', '2026-01-01', '2026-01-02', { cause: 'blocked drain' }),
      caseOf('B', '2026-01-20', '2026-01-21', { cause: 'sagging vent' }),
    ]
    expect(repeatsOf(cases, window)).toEqual([
      {
        furnaceId: 'furnace 1',
        earlierId: 'A',
        laterId: 'B',
        jobEndedAt: Date.parse('2026-01-02'),
        backAt: Date.parse('2026-01-20'),
        days: 18,
        earlierEnding: 'repaired and proven',
        earlierCause: 'blocked drain',
        laterCause: 'sagging vent',
        causes: 'another cause',
      },
    ])
  })

  test('the last day counts, a moment later does not', () => {
    const fixed = caseOf('A', '2026-01-01', '2026-01-02')
    expect(pairs([fixed, caseOf('B', '2026-02-01')])).toEqual(['A → B'])
    expect(pairs([fixed, caseOf('B', '2026-02-01T00:00:01Z')])).toEqual([])
    expect(pairs([fixed, caseOf('B', '2026-02-01T00:00:01Z')], windowOf({ days: 31 }))).toEqual(['A → B'])
  })

  test('another furnace is another story', () => {
    const cases = [
      caseOf('A', '2026-01-01', '2026-01-02'),
      caseOf('B', '2026-01-05', undefined, { furnaceId: 'furnace 2' }),
    ]
    expect(pairs(cases)).toEqual([])
  })

  test('another circuit counts only when the window takes any', () => {
    const cases = [
      caseOf('A', '2026-01-01', '2026-01-02'),
      caseOf('B', '2026-01-05', undefined, { circuit: 'something else' }),
    ]
    expect(pairs(cases)).toEqual([])
    expect(pairs(cases, windowOf({ sameCircuit: false }))).toEqual(['A → B'])
  })

  test('two complaints about something else are not known to be about the same', () => {
    const cases = [
      caseOf('A', '2026-01-01', '2026-01-02', { circuit: 'something else' }),
      caseOf('B', '2026-01-05', undefined, { circuit: 'something else' }),
    ]
    expect(pairs(cases)).toEqual([])
  })

  test.each([
    ['repaired and proven', ['A → B']],
    ['repaired, not proven', ['A → B']],
    ['no fault found', ['A → B']],
    ['waiting for part', []],
    ['repair declined', []],
    ['left off', []],
  ] as [Ending, string[]][])('after "%s": %j', (how, expected) => {
    expect(pairs([caseOf('A', '2026-01-01', '2026-01-02', { how }), caseOf('B', '2026-01-05')])).toEqual(
      expected,
    )
  })

  test('a case nobody ended is no job, and one opened before the job was done no callback', () => {
    expect(pairs([caseOf('A', '2026-01-01'), caseOf('B', '2026-01-05')])).toEqual([])
    expect(pairs([caseOf('A', '2026-01-01', '2026-01-06'), caseOf('B', '2026-01-05')])).toEqual([])
  })

  test('called back the same day counts; a job is called back once, and a callback can itself come back', () => {
    const cases = [
      caseOf('A', '2026-01-01', '2026-01-02'),
      caseOf('B', '2026-01-02', '2026-01-03'),
      caseOf('C', '2026-01-10', '2026-01-11'),
    ]
    expect(pairs(cases)).toEqual(['A → B', 'B → C'])
    expect(repeatsOf(cases, window)[0]!.days).toBe(0)
  })

  test('what follows a furnace left off on its callback is that case’s affair, not a second callback of the first', () => {
    const cases = [
      caseOf('A', '2026-01-01', '2026-01-02'),
      caseOf('B', '2026-01-05', '2026-01-05', { how: 'left off' }),
      caseOf('C', '2026-01-10'),
    ]
    expect(pairs(cases)).toEqual(['A → B'])
  })

  test('in heating-season days a summer between takes none', () => {
    const cases = [caseOf('A', '2025-04-20', '2025-04-21'), caseOf('B', '2025-10-15')]
    expect(pairs(cases)).toEqual([])
    const season = windowOf({ calendar: 'heating-season days' })
    expect(repeatsOf(cases, season)).toMatchObject([{ earlierId: 'A', laterId: 'B', days: 24 }])
  })

  test('causes: the same, another, or not known while one is not named', () => {
    const told = (earlier?: string, later?: string) =>
      repeatsOf(
        [
          caseOf('A', '2026-01-01', '2026-01-02', { cause: earlier }),
          caseOf('B', '2026-01-05', undefined, { cause: later }),
        ],
        window,
      )[0]
    expect(told('blocked drain', 'blocked drain')!.causes).toBe('same cause')
    expect(told('blocked drain', 'sagging vent')!.causes).toBe('another cause')
    expect(told('blocked drain')).toMatchObject({ causes: 'not known', laterCause: 'not named' })
    expect(told(undefined, 'blocked drain')!.causes).toBe('not known')
  })

  test('finds what looking at every pair finds (brute force), whatever the window', () => {
    fc.assert(
      fc.property(anyCases, anyWindow, (cases, within) => {
        const counts = (one: CallbackCase) => !within.sameCircuit || one.circuit === 'proving circuit'
        const follows = (job: CallbackCase, other: CallbackCase) =>
          other.id !== job.id &&
          other.furnaceId === job.furnaceId &&
          counts(other) &&
          other.openedAt >= job.ended!.at
        const expected = cases
          .filter((job) => counts(job) && job.ended !== undefined)
          .filter((job) =>
            ['repaired and proven', 'repaired, not proven', 'no fault found'].includes(job.ended!.how),
          )
          .flatMap((job) => {
            const later = cases.filter((other) => follows(job, other))
            const first = later.filter((one) =>
              later.every(
                (other) =>
                  one.openedAt < other.openedAt || (one.openedAt === other.openedAt && one.id <= other.id),
              ),
            )
            return first.map((next) => ({ job, next }))
          })
        const found = repeatsOf(cases, within)
        for (const { days } of found) expect(days).toBeLessThanOrEqual(within.days + 1e-9)
        const late = expected.filter(({ job }) => !found.some(({ earlierId }) => earlierId === job.id))
        expect(found.length + late.length).toBe(expected.length)
        for (const { earlierId, laterId } of found)
          expect(expected.some(({ job, next }) => job.id === earlierId && next.id === laterId)).toBe(true)
        if (within.calendar === 'calendar days')
          for (const { job, next } of late)
            expect((next.openedAt - job.ended!.at) / 86_400_000).toBeGreaterThan(within.days)
      }),
      settings,
    )
  })

  test('the order of cases does not matter', () => {
    fc.assert(
      fc.property(anyCases, anyWindow, (cases, within) => {
        expect(repeatsOf(cases.toReversed(), within)).toEqual(repeatsOf(cases, within))
      }),
      settings,
    )
  })

  test('a longer window never loses a callback', () => {
    fc.assert(
      fc.property(anyCases, anyWindow, (cases, within) => {
        const longer = pairs(cases, { ...within, days: within.days * 2 })
        expect(longer).toEqual(expect.arrayContaining(pairs(cases, within)))
      }),
      settings,
    )
  })

  test('a case given twice, a time that is none, a window without days: RangeError', () => {
    const fixed = caseOf('A', '2026-01-01', '2026-01-02')
    expect(() => repeatsOf([fixed, fixed], window)).toThrow(
      'Every case must come once, with an id of its own',
    )
    expect(() => repeatsOf([{ ...fixed, openedAt: Number.NaN }], window)).toThrow(
      'Every time of a case must be a number of milliseconds',
    )
    expect(() => repeatsOf([fixed, caseOf('B', '2026-01-05')], windowOf({ days: 0 }))).toThrow(
      'A callback window has a number of days above 0',
    )
  })
})
