import { causes } from '@/lib/catalogue/causes'
import { type CauseStatus, causeStatuses, unlistedCause } from '@/lib/core/diagnosis'
import type { CaseStanding } from '@/lib/records/view/case/caseStanding'

/** Everything a case can stand at, open ones first. `open` and `over` stand for several. */
export const standingFilters = [
  'open',
  'being worked on',
  'not finished',
  'endings disagree',
  'left off',
  'waiting for part',
  'repaired, not proven',
  'over',
  'repaired and proven',
  'no fault found',
  'repair declined',
] as const satisfies readonly ('open' | 'over' | CaseStanding)[]
export type StandingFilter = (typeof standingFilters)[number]

/** What the list of cases is narrowed down to. An empty text narrows nothing. */
export type CaseFilters = {
  /** Any part of site label, model, serial or complaint. */
  typed: string
  standing: StandingFilter | ''
  /** Id of a cause. */
  cause: string
  /** How well the cause is known. */
  known: CauseStatus | ''
  /** Id of a model range. */
  range: string
  branch: string
  /** Opened on this day or later, year-month-day. */
  from: string
  /** Opened on this day or earlier. */
  to: string
}

/** The name of each filter in the address, in the order in which they are written there. */
const names: Readonly<Record<keyof CaseFilters, string>> = {
  typed: 'q',
  standing: 'standing',
  cause: 'cause',
  known: 'known',
  range: 'range',
  branch: 'branch',
  from: 'from',
  to: 'to',
}

export const noFilters: CaseFilters = {
  typed: '',
  standing: '',
  cause: '',
  known: '',
  range: '',
  branch: '',
  from: '',
  to: '',
}

const day = /^\d{4}-\d{2}-\d{2}$/
const oneOf = <Word extends string>(words: readonly Word[], text: string): Word | '' =>
  words.find((word) => word === text) ?? ''

/** Reads the filters of an address. What cannot be read narrows nothing. */
export function readFilters(query: { get(name: string): string | null }): CaseFilters {
  const said = (filter: keyof CaseFilters) => query.get(names[filter]) ?? ''
  return {
    typed: said('typed'),
    standing: oneOf(standingFilters, said('standing')),
    cause: oneOf([...causes.map(({ id }) => id), unlistedCause], said('cause')),
    known: oneOf(causeStatuses, said('known')),
    range: said('range'),
    branch: said('branch'),
    from: day.test(said('from')) ? said('from') : '',
    to: day.test(said('to')) ? said('to') : '',
  }
}

/** The address of the list narrowed down so, the same filters always in the same order. */
export function filtersHref(filters: CaseFilters): string {
  const query = new URLSearchParams()
  for (const filter of Object.keys(names) as (keyof CaseFilters)[]) {
    if (filters[filter] !== '') query.set(names[filter], filters[filter])
  }
  const text = query.toString()
  return text === '' ? '/cases' : `/cases?${text}`
}

/** The filters that narrow something. */
export const activeFilters = (filters: CaseFilters): (keyof CaseFilters)[] =>
  (Object.keys(names) as (keyof CaseFilters)[]).filter((filter) => filters[filter].trim() !== '')
