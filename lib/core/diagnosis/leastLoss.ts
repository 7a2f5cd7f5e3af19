import type { NamedCause } from './catalogue'
import { causeAsOf, type ReplayCase } from './replayTimeline'

/** Which of the tried settings lost least on earlier cases whose cause was known by then; the first of equals. */
export function leastLoss(
  past: readonly { one: ReplayCase; chanceOf: Map<string, number[]> }[],
  before: number,
  counts: (cause: NamedCause | undefined) => boolean,
  truthName: (cause: NamedCause) => string,
  tried: number,
): number | undefined {
  const losses = new Array<number>(tried).fill(0)
  let scored = 0
  for (const { one, chanceOf } of past) {
    const truth = causeAsOf(one, before)
    if (truth === undefined || !counts(truth)) continue
    scored++
    chanceOf.get(truthName(truth))!.forEach((chance, tuning) => {
      losses[tuning]! -= Math.log(Math.max(chance, Number.EPSILON))
    })
  }
  return scored === 0 ? undefined : losses.indexOf(Math.min(...losses))
}
