import type { CaseFacts } from './caseFacts'
import { type CaseShare, caseShare } from './caseShare'

/** Minutes of work on some cases. Those of which nobody said any are kept apart: they are not nought. */
export type MinutesFigure = {
  minutes: number
  /** In the middle of those that were said; left out where none was. */
  medianMinutes?: number
  saidIds: readonly string[]
  notSaidIds: readonly string[]
}

export type CostFigures = {
  /** All cases that ended in the period, in whatever way. */
  all: MinutesFigure
  /** Those of them that were opened as a callback of an earlier job. */
  callbacks: MinutesFigure
  /** By main cause, most minutes first; 'not named' among them. */
  byCause: readonly (MinutesFigure & { key: string })[]
  /** What the repairs used, most cases first; of those cases the ones that were callbacks. */
  parts: readonly { key: string; words: string; callbacks: CaseShare }[]
}

/** The key of cases of which nobody named a cause. */
export const notNamed = 'not named'

/**
 * What the cases cost, in minutes and parts; there are no prices on record.
 * @param cases that ended in the period
 * @param isCallback whether a case was opened as a callback of an earlier job
 */
export function costFigures(
  cases: readonly CaseFacts[],
  isCallback: (one: CaseFacts) => boolean,
): CostFigures {
  const byCause = new Map<string, CaseFacts[]>()
  const byPart = new Map<string, { words: string; cases: CaseFacts[] }>()
  for (const one of cases) {
    const cause = one.cause ?? notNamed
    const ofCause = byCause.get(cause)
    if (ofCause === undefined) byCause.set(cause, [one])
    else ofCause.push(one)
    for (const { key, words } of one.parts) {
      const ofPart = byPart.get(key)
      if (ofPart === undefined) byPart.set(key, { words, cases: [one] })
      else ofPart.cases.push(one)
    }
  }
  return {
    all: minutesFigure(cases),
    callbacks: minutesFigure(cases.filter(isCallback)),
    byCause: [...byCause]
      .map(([key, ofCause]) => ({ key, ...minutesFigure(ofCause) }))
      .sort((a, b) => b.minutes - a.minutes || (a.key < b.key ? -1 : 1)),
    parts: [...byPart]
      .map(([key, { words, cases: used }]) => ({ key, words, callbacks: caseShare(used, isCallback) }))
      .sort((a, b) => b.callbacks.of - a.callbacks.of || (a.key < b.key ? -1 : 1)),
  }
}

function minutesFigure(cases: readonly CaseFacts[]): MinutesFigure {
  const saidIds: string[] = []
  const notSaidIds: string[] = []
  const said: number[] = []
  for (const { id, minutes } of cases) {
    if (minutes === undefined) notSaidIds.push(id)
    else {
      saidIds.push(id)
      said.push(minutes)
    }
  }
  const sorted = Float64Array.from(said).sort()
  const [lower, upper] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]]
  return {
    minutes: said.reduce((sum, minutes) => sum + minutes, 0),
    ...(lower === undefined || upper === undefined ? {} : { medianMinutes: (lower + upper) / 2 }),
    saidIds,
    notSaidIds,
  }
}
