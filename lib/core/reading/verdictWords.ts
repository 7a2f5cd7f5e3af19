import type { Result } from '@/lib/core/result'
import { closesWhen } from './phases'
import type { Comparison, Judgement } from './types'

export type VerdictWords =
  | 'Too low to close it'
  | 'Enough to close it'
  | 'Too low to hold it closed'
  | 'Enough to hold it closed'
  | 'Too low to open it'
  | 'Enough to open it'
  | 'Too low to hold it open'
  | 'Enough to hold it open'
  | 'Too close to call'
  | 'Higher than expected'
  | 'Settle the rating first'
  | 'Zero first'
  | "Can't be compared"

/**
 * The words for one judgement. What happens at the higher point is a verb, what ends at the lower point is held:
 * most switches close at the higher and are held closed down to the lower; one that opens on rise opens at the
 * higher and is held open down to the lower. A number of unstated action is spoken of as the higher one, because
 * only "too low" is ever said of it.
 * @example a suction switch judged against the point where it opens, 'enough': 'Enough to hold it closed'
 */
export function judgementWords(
  judgement: Pick<Judgement, 'verdict' | 'against'>,
  kind: Comparison['kind'],
): VerdictWords {
  if (judgement.verdict === 'too close to call') return 'Too close to call'
  const enough = judgement.verdict === 'enough'
  if (closesWhen(kind) === 'too low') {
    if (judgement.against === 'closes') return enough ? 'Enough to hold it open' : 'Too low to hold it open'
    return enough ? 'Enough to open it' : 'Too low to open it'
  }
  if (judgement.against === 'opens') return enough ? 'Enough to hold it closed' : 'Too low to hold it closed'
  return enough ? 'Enough to close it' : 'Too low to close it'
}

/** A dispute and a gauge that is off are no reading that can't be compared: it can be, once that is put right. */
const problemWords: Readonly<Record<string, VerdictWords>> = {
  'settle-rating-first': 'Settle the rating first',
  'zero-first': 'Zero first',
}

/**
 * The words for a whole answer of compareReading, the leading ones first. Higher than expected stands above
 * everything, so that it is never passed as good margin. A reading at rest has none. A problem has the words for what
 * has to be done first, or "Can't be compared"; its message says why and what to do.
 */
export function verdictWords(compared: Result<Comparison>): VerdictWords[] {
  if (!compared.ok) return [problemWords[compared.problem.code] ?? "Can't be compared"]
  const comparison = compared.value
  const judged = [comparison.start, comparison.run].filter((judgement) => judgement !== undefined)
  return [
    ...(comparison.higherThanExpected === true ? (['Higher than expected'] as const) : []),
    ...judged.map((judgement) => judgementWords(judgement, comparison.kind)),
  ]
}
