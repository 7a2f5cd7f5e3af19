import type { FurnaceRating } from '@/lib/core/rating'
import type { LimitKind } from '@/lib/core/vocabulary'
import type { ReadingBody } from '@/lib/records/kinds/reading'

/** What a reading writes down of the rating it is held against, so that it can be audited as it stood that day. */
export function limitsNow(rating: FurnaceRating): NonNullable<ReadingBody['against']> {
  const standings = [
    ['closes', rating.closes],
    ['opens', rating.opens],
    ['not stated', rating.unstated],
  ] as const
  return standings.flatMap(([action, standing]) =>
    standing.level === 'Not on file'
      ? []
      : [
          {
            action,
            ...statedValue(standing),
            ...(standing.level === 'In dispute' && standing.rivals.length > 0
              ? { rivals: standing.rivals.map(statedValue) }
              : {}),
            ...(standing.kind === undefined ? {} : { kind: standing.kind }),
            between: standing.between,
            tap: standing.tap,
            stage: standing.stage,
            sense: standing.sense,
            level: standing.level,
            sources: [...new Set(standing.sources.map(({ source }) => source))],
            reportIds: [...standing.reportIds],
          },
        ],
  )
}

type Value = { limit: LimitKind; pascals: number; toleranceAbove?: number; toleranceBelow?: number }

const statedValue = ({ limit, pascals, toleranceAbove, toleranceBelow }: Value): Value => ({
  limit,
  pascals,
  ...(toleranceAbove === undefined ? {} : { toleranceAbove }),
  ...(toleranceBelow === undefined ? {} : { toleranceBelow }),
})
