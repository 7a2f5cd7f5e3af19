import fc from 'fast-check'
import type { CallbackCase, CallbackWindow, Ending, Lifetimes } from '@/lib/core/callbacks'
import { usualCallbackWindow } from '@/lib/core/callbacks'
import { deepFreeze } from '../diagnosis/anyDiagnosis'

/** Midnight UTC of a day, or a moment of it, as milliseconds. */
export const at = (day: string): number => Date.parse(day.length === 10 ? `${day}T00:00:00Z` : day)

/** A case on the proving circuit of one furnace, opened and ended on days. */
export function caseOf(
  id: string,
  opened: string,
  ended?: string,
  rest: Partial<CallbackCase> & { how?: Ending } = {},
): CallbackCase {
  const { how = 'repaired and proven', ...fields } = rest
  return deepFreeze({
    id,
    furnaceId: 'furnace 1',
    circuit: 'proving circuit',
    openedAt: at(opened),
    ...(ended !== undefined && { ended: { at: at(ended), how } }),
    ...fields,
  })
}

export const windowOf = (parts: Partial<CallbackWindow> = {}): CallbackWindow =>
  deepFreeze({ ...usualCallbackWindow, ...parts })

export const anyLifetimes: fc.Arbitrary<Lifetimes> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 50 }), fc.boolean()), { minLength: 1, maxLength: 40 })
  .map((pairs) => deepFreeze({ times: pairs.map(([time]) => time), events: pairs.map(([, event]) => event) }))

const endings: readonly Ending[] = [
  'repaired and proven',
  'repaired, not proven',
  'waiting for part',
  'no fault found',
  'repair declined',
  'left off',
]

/** Cases of up to four furnaces over two winters, some still open, some overlapping. */
export const anyCases: fc.Arbitrary<CallbackCase[]> = fc
  .array(
    fc.record({
      furnace: fc.integer({ min: 1, max: 4 }),
      circuit: fc.constantFrom('proving circuit' as const, 'something else' as const),
      openedOn: fc.integer({ min: 0, max: 500 }),
      lasted: fc.option(fc.integer({ min: 0, max: 20 }), { nil: undefined }),
      how: fc.constantFrom(...endings),
      cause: fc.option(fc.constantFrom('sagging vent', 'blocked drain'), { nil: undefined }),
    }),
    { maxLength: 25 },
  )
  .map((rows) =>
    deepFreeze(
      rows.map(({ furnace, circuit, openedOn, lasted, how, cause }, place): CallbackCase => {
        const openedAt = at('2024-10-01') + openedOn * 86_400_000
        return {
          id: `case ${place}`,
          furnaceId: `furnace ${furnace}`,
          circuit,
          openedAt,
          ...(lasted !== undefined && { ended: { at: openedAt + lasted * 86_400_000, how } }),
          ...(cause !== undefined && { cause }),
        }
      }),
    ),
  )

export const anyWindow: fc.Arbitrary<CallbackWindow> = fc
  .record({
    days: fc.integer({ min: 1, max: 90 }),
    sameCircuit: fc.boolean(),
    calendar: fc.constantFrom('calendar days' as const, 'heating-season days' as const),
    season: fc.record({
      firstMonth: fc.integer({ min: 1, max: 12 }),
      lastMonth: fc.integer({ min: 1, max: 12 }),
    }),
  })
  .map(deepFreeze)
