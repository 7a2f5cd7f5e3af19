import type { LabelReading, PartCandidate, ValueCandidate } from './types'

type Judged = { confidence: number; offered: boolean; why: readonly string[] }

const alone = 'The picture was read twice, and only once like this.'

/**
 * Two readings of one picture made one. What both have alike is as sure as the surer of them; what only one has is
 * shown with that, and never offered.
 */
export function agreeing(one: LabelReading, other: LabelReading): LabelReading {
  return {
    values: merged(one.values, other.values, ratingOf),
    parts: merged(one.parts, other.parts, ({ text }) => text),
  }
}

/** What a rating comes to, however it was spaced: two readings that differ in this differ. */
const ratingOf = ({ pressures, text }: ValueCandidate): string =>
  pressures.length === 0
    ? text
    : pressures
        .map(({ pascals, action, sense, limit, toleranceAbove, toleranceBelow }) =>
          [
            pascals.toFixed(3),
            action,
            sense,
            limit,
            toleranceAbove?.toFixed(3),
            toleranceBelow?.toFixed(3),
          ].join(),
        )
        .join(';')

function merged<Candidate extends Judged & (ValueCandidate | PartCandidate)>(
  one: readonly Candidate[],
  other: readonly Candidate[],
  keyOf: (candidate: Candidate) => string,
): Candidate[] {
  const byKey = new Map<string, Candidate[]>()
  for (const each of [...one, ...other]) byKey.set(keyOf(each), [...(byKey.get(keyOf(each)) ?? []), each])
  const both = new Set(one.map(keyOf).filter((key) => other.some((each) => keyOf(each) === key)))
  return [...byKey]
    .map(([key, same]) => {
      const best = same.reduce((kept, each) => (each.confidence > kept.confidence ? each : kept))
      return both.has(key) ? best : { ...best, offered: false, why: [...best.why, alone] }
    })
    .sort((a, b) => Number(b.offered) - Number(a.offered) || b.confidence - a.confidence)
}
