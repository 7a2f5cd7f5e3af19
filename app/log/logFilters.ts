import { recordKinds } from '@/lib/records/registry'

/** What the log is narrowed down to. An empty text narrows nothing. */
export type LogFilters = {
  /** Id of whoever said it. */
  person: string
  kind: string
  /** Id of a furnace. */
  furnace: string
  /** Said on this day or later, year-month-day. */
  from: string
  /** Said on this day or earlier. */
  to: string
}

export type LogAddress = LogFilters & {
  /** Which page of the list, from 1. */
  page: number
}

export const noFilters: LogFilters = { person: '', kind: '', furnace: '', from: '', to: '' }

const names = Object.keys(noFilters) as (keyof LogFilters)[]
const day = /^\d{4}-\d{2}-\d{2}$/

/** Reads the address of the log. What cannot be read narrows nothing. */
export function readLogAddress(query: { get(name: string): string | null }): LogAddress {
  const said = (filter: keyof LogFilters) => query.get(filter) ?? ''
  const page = query.get('page') ?? ''
  return {
    person: said('person'),
    kind: Object.hasOwn(recordKinds, said('kind')) ? said('kind') : '',
    furnace: said('furnace'),
    from: day.test(said('from')) ? said('from') : '',
    to: day.test(said('to')) ? said('to') : '',
    page: /^[1-9]\d{0,5}$/.test(page) ? Number(page) : 1,
  }
}

/** The address of the log narrowed down so, always in the same order; the first page is not named. */
export function logHref({ page, ...filters }: LogAddress): string {
  const query = new URLSearchParams()
  for (const name of names) if (filters[name] !== '') query.set(name, filters[name])
  if (page > 1) query.set('page', String(page))
  const text = query.toString()
  return text === '' ? '/log' : `/log?${text}`
}

export const activeFilters = (filters: LogFilters): (keyof LogFilters)[] =>
  names.filter((name) => filters[name] !== '')
