import type { FindingId } from '@/lib/catalogue/findings'
import { trueCauses, truthOf } from '.'
import type { Shows } from './types'
import { usuallyShown } from './usual'

/** Shares of the values other than the good one; none where nothing is said. */
export function sharesOf(shows: Shows, id: FindingId): Readonly<Record<string, number>> {
  const share: unknown = shows[id]
  if (typeof share === 'number') return { seen: share }
  return (share ?? {}) as Readonly<Record<string, number>>
}

/** A finding leads to a cause where it is seen with it in a fifth of the cases, and this many times as often as usual. */
const leadsFrom = { share: 0.2, timesUsual: 2.2 }

const trails: ReadonlyMap<string, ReadonlySet<FindingId>> = new Map(
  Object.keys(trueCauses).map((cause) => {
    const { shows } = truthOf(cause)
    const leading = (Object.keys(shows) as FindingId[]).filter((id) => {
      const usual = sharesOf(usuallyShown, id)
      return Object.entries(sharesOf(shows, id)).some(
        ([value, share]) =>
          share >= leadsFrom.share && share >= leadsFrom.timesUsual * (usual[value] ?? 0.02),
      )
    })
    return [cause, new Set(leading)]
  }),
)

/** The findings by which a cause shows itself. */
export const trailOf = (cause: string): ReadonlySet<FindingId> => trails.get(cause) ?? new Set()
