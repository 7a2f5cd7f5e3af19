import type { Chances } from '@/lib/core/diagnosis'
import { chancesFrom, type WordsByValue } from '../likelihoods/chances'
import { usualWordOfDanger, usualWordOfGoodOrder, usualWordOfTrouble } from '../likelihoods/words'
import { commonPractice } from '../provenance'
import { type FindingEntry, type FindingGroup, seenOrRuledOut, type WrittenFinding } from './types'

/** Chance of each value in a furnace whose trouble has nothing to do with the finding. */
function usualChances({ is = 'trouble', values, usual, danger }: WrittenFinding): Chances {
  const all: readonly string[] = values ?? seenOrRuledOut
  if (is === 'fact') return Object.fromEntries(all.map((value) => [value, 1 / all.length]))
  if (is === 'good order') return chancesFrom(all, { [all[0]!]: usualWordOfGoodOrder })
  const outOfOrder = values === undefined ? ['seen'] : values.slice(1)
  // Of several values the dangerous one is of a kind with the others; how often each is seen is written beside it.
  const word = danger === undefined || values !== undefined ? usualWordOfTrouble : usualWordOfDanger
  const words: WordsByValue = Object.fromEntries(outOfOrder.map((value) => [value, word]))
  return chancesFrom(all, { ...words, ...usual })
}

/** Fills in everything that is not written down with each finding. */
export function findingEntry(id: string, group: FindingGroup, written: WrittenFinding): FindingEntry {
  const { name, hint, values = seenOrRuledOut, asked, contextOnly, danger, proves, source } = written
  return {
    id,
    group,
    name,
    ...(hint !== undefined && { hint }),
    values,
    usual: usualChances(written),
    asked: asked ?? 'by a person',
    carries: contextOnly ? 'context only' : 'evidence',
    ...(danger && { danger: { code: danger.code, value: danger.value ?? 'seen' } }),
    ...(proves && { proves }),
    source: source ?? commonPractice,
  }
}
