import type { CaseFacts } from './caseFacts'
import { addTo, type CaseShare, newTally, shareOf, type Tally } from './caseShare'
import { notNamed } from './job'
import { ofKey } from './ofKey'

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

/** A case that ended in the period. */
export type EndedCase = {
  facts: CaseFacts
  /** It was opened as a callback of an earlier job. */
  isCallback: boolean
}

/** What the cases cost, in minutes and parts; there are no prices on record. */
export function costFigures(cases: readonly EndedCase[]): CostFigures {
  const [all, callbacks] = [noMinutes(), noMinutes()]
  const byCause = new Map<string, Minutes>()
  const byPart = new Map<string, { words: string; tally: Tally }>()
  for (const { facts, isCallback } of cases) {
    addMinutes(all, facts)
    if (isCallback) addMinutes(callbacks, facts)
    addMinutes(ofKey(byCause, facts.cause ?? notNamed, noMinutes), facts)
    for (const { key, words } of facts.parts)
      addTo(ofKey(byPart, key, () => ({ words, tally: newTally() })).tally, facts.id, isCallback)
  }
  return {
    all: minutesFigure(all),
    callbacks: minutesFigure(callbacks),
    byCause: [...byCause]
      .map(([key, minutes]) => ({ key, ...minutesFigure(minutes) }))
      .sort((a, b) => b.minutes - a.minutes || (a.key < b.key ? -1 : 1)),
    parts: [...byPart]
      .map(([key, { words, tally }]) => ({ key, words, callbacks: shareOf(tally) }))
      .sort((a, b) => b.callbacks.of - a.callbacks.of || (a.key < b.key ? -1 : 1)),
  }
}

/** The minutes of some cases while they are gathered. */
type Minutes = { saidIds: string[]; notSaidIds: string[]; said: number[] }
const noMinutes = (): Minutes => ({ saidIds: [], notSaidIds: [], said: [] })

function addMinutes(to: Minutes, { id, minutes }: CaseFacts): void {
  if (minutes === undefined) to.notSaidIds.push(id)
  else {
    to.saidIds.push(id)
    to.said.push(minutes)
  }
}

function minutesFigure({ saidIds, notSaidIds, said }: Minutes): MinutesFigure {
  const sorted = new Float64Array(said).sort()
  const [lower, upper] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]]
  return {
    minutes: said.reduce((sum, minutes) => sum + minutes, 0),
    ...(lower === undefined || upper === undefined ? {} : { medianMinutes: (lower + upper) / 2 }),
    saidIds,
    notSaidIds,
  }
}
