import type { Chances } from '@/lib/core/diagnosis'
import { findingById } from '../findings'
import { chancesFrom, type WordsByValue } from '../likelihoods/chances'
import type { LikelihoodWord } from '../likelihoods/words'
import { commonPractice } from '../provenance'
import { shareOfGroup, weightOf } from './baseRates'
import type { CauseEntry, CauseGroup, Says, WrittenCause } from './types'

function likelihoodsFrom(says: Says): Record<string, Chances> {
  return Object.fromEntries(
    Object.entries(says).map(([id, said]: [string, LikelihoodWord | WordsByValue]) => {
      const finding = findingById(id)
      if (finding === undefined) throw new RangeError(`There is no finding ${id}`)
      const words = typeof said === 'string' ? { seen: said } : said
      return [id, chancesFrom(finding.values, words, finding.usual)]
    }),
  )
}

/** The causes of one group, the group's share split over them by how often each is met. */
export function causesOf(group: CauseGroup, written: Readonly<Record<string, WrittenCause>>): CauseEntry[] {
  const weights = Object.values(written).reduce((sum, { seen }) => sum + weightOf[seen], 0)
  return Object.entries(written).map(([id, { says, source, ...cause }]) => ({
    id,
    group,
    ...cause,
    prior: (shareOfGroup[group] * weightOf[cause.seen]) / weights,
    likelihoods: likelihoodsFrom(says),
    source: source ?? commonPractice,
  }))
}
