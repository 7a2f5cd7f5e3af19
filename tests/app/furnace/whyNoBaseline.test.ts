import { describe, expect, test } from 'vitest'
import { whyNoBaseline } from '@/app/furnace/baseline/whyNoBaseline'
import {
  compareReading,
  type RatingForComparison,
  type Reading,
  usualReadingSettings,
} from '@/lib/core/reading'
import type { Level } from '@/lib/core/vocabulary'

const inches = (figure: number): number => figure * 249.08891
const reading: Reading = {
  samples: [inches(0.92)],
  sense: 'suction',
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  stage: 'low fire',
  door: 'on',
  phase: 'steady hot',
  contacts: 'closed',
}
const rating = (standing: Level): RatingForComparison => ({
  opens: { pascals: inches(0.43), kind: 'nominal', standing },
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  stage: 'low fire',
  sense: 'suction',
})
const compared = (of: Reading, standing: Level) =>
  compareReading({
    reading: of,
    instrument: {
      percentOfReading: 1,
      counts: 2,
      combine: 'plus',
      spanPascals: inches(20),
      resolutionPascals: inches(0.001),
      zeroed: true,
    },
    rating: rating(standing),
    settings: { ...usualReadingSettings, now: '2026-01-30T09:00:00Z' },
  })
const healthy = { reading, zeroed: true, byTeeAtTheSwitch: true, compared: undefined }

// What makes a running value a healthy one: common practice, no published source.
describe('whyNoBaseline(taken)', () => {
  test('a zeroed, teed-in, hot reading with the contact closed is a baseline', () => {
    expect(whyNoBaseline(healthy)).toEqual([])
    expect(whyNoBaseline({ ...healthy, compared: compared(reading, 'Verified') })).toEqual([])
  })

  test('a cold reading is one too, whatever its contact: before it makes, the contact is open', () => {
    expect(
      whyNoBaseline({ ...healthy, reading: { ...reading, phase: 'pre-purge', contacts: 'open' } }),
    ).toEqual([])
  })

  test.each([
    ['at rest', { reading: { ...reading, phase: 'rest' } as Reading }, /^At rest/],
    ['with a gauge that was not zeroed', { zeroed: false }, /^Zero the gauge/],
    ['not at the switch', { byTeeAtTheSwitch: false }, /^Tee the gauge in/],
    [
      'hot with the contact open',
      { reading: { ...reading, contacts: 'open' } as Reading },
      /^The contact was open/,
    ],
  ])('%s it is none', (_, part, sentence) => {
    const why = whyNoBaseline({ ...healthy, ...part })
    expect(why).toHaveLength(1)
    expect(why[0]).toMatch(sentence)
  })

  test.each([
    ['Verified', 1],
    ['Supported', 1],
    ['Unverified', 0],
  ] as const)(
    'too low to hold it closed, by a rating that is %s: %i reason against it',
    (standing, count) => {
      const low: Reading = { ...reading, samples: [inches(0.3)] }
      expect(whyNoBaseline({ ...healthy, reading: low, compared: compared(low, standing) })).toHaveLength(
        count,
      )
    },
  )
})
