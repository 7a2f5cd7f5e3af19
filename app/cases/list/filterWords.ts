import { type CauseStatus, causeStatuses } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { rangeWords } from '../../equipment/candidates'
import { sayDate } from '../../ui/words/sayDate'
import { capitalised } from '../work/capitalised'
import { causeName } from '../work/causeName'
import type { CaseFilters, StandingFilter } from './caseFilters'

/** How well a cause is known, as the list says it. */
export const knownWords: Readonly<Record<CauseStatus, string>> = {
  presumed: 'presumed',
  confirmed: 'confirmed by readings after the repair',
  durable: 'proven durable',
}

export const knownOptions = causeStatuses.map((value) => ({ value, words: capitalised(knownWords[value]) }))

/** The two groups of standings in words that say what is in them; a single standing is a word already. */
export const standingWords = (standing: StandingFilter): string =>
  standing === 'open'
    ? 'Open: somebody has to go there again'
    : standing === 'over'
      ? 'Over: nothing more is to be done'
      : capitalised(standing)

/** What a filter narrows the list down to, in a few words. */
export function filterWords(filter: keyof CaseFilters, filters: CaseFilters, file: TeamFile): string {
  const value = filters[filter]
  if (filter === 'typed') return `“${value.trim()}”`
  if (filter === 'standing') return capitalised(value)
  if (filter === 'cause') return causeName(value)
  if (filter === 'known') return `Cause ${value}`
  if (filter === 'from') return `Opened from ${sayDate(value)}`
  if (filter === 'to') return `Opened until ${sayDate(value)}`
  if (filter === 'branch') return `Branch ${value}`
  const range = file.ranges.get(file.keptId(value))
  return range === undefined ? 'A model range that is not on this device' : rangeWords(file, range)
}
