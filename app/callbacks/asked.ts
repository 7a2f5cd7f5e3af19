import { monthName, monthNumber, readMonth } from '@/lib/core/callbacks/month'
import { type CallbackQuestion, usualQuestion } from '@/lib/records/view/callbacks/question'

/** Periods that move on with the present, in months, and two that do not. */
export const periods = ['12', '24', '60', 'all', 'chosen'] as const
export type Period = (typeof periods)[number]

/** Days to choose from; an address may name any other whole number up to two years. */
export const usualDays = [7, 14, 30, 60, 90, 180] as const
const mostDays = 730

/** What is chosen on the screen. An empty branch or range is all of them. */
export type Asked = {
  period: Period
  /** Months of a chosen period, '2026-01'; empty until one is chosen. */
  from: string
  to: string
  branch: string
  range: string
  days: number
  circuit: 'same' | 'any'
  scale: 'season' | 'calendar'
  /** The key of the figure whose cases are listed. */
  open: string
}

export const usualAsked: Asked = {
  period: '24',
  from: '',
  to: '',
  branch: '',
  range: '',
  days: 30,
  circuit: 'same',
  scale: 'season',
  open: '',
}

const month = /^\d{4}-(0[1-9]|1[0-2])$/

/** Reads what an address asks. What cannot be read is as usual. */
export function readAsked(query: { get(name: string): string | null }): Asked {
  const said = (name: keyof Asked) => query.get(name) ?? ''
  const days = Number(said('days'))
  return {
    period: periods.find((period) => period === said('period')) ?? usualAsked.period,
    from: month.test(said('from')) ? said('from') : '',
    to: month.test(said('to')) ? said('to') : '',
    branch: said('branch'),
    range: said('range'),
    days: Number.isInteger(days) && days >= 1 && days <= mostDays ? days : usualAsked.days,
    circuit: said('circuit') === 'any' ? 'any' : 'same',
    scale: said('scale') === 'calendar' ? 'calendar' : 'season',
    open: said('open'),
  }
}

/** The address of what is asked; what is as usual is left out. */
export function askedHref(asked: Asked): string {
  const query = new URLSearchParams()
  for (const name of Object.keys(usualAsked) as (keyof Asked)[])
    if (asked[name] !== usualAsked[name]) query.set(name, `${asked[name]}`)
  const text = query.toString()
  return text === '' ? '/callbacks' : `/callbacks?${text}`
}

/**
 * The question that the figures answer.
 * @param firstMonth of the oldest case on file, '2026-01'; left out while there is none
 * @param now ISO 8601
 */
export function questionOf(asked: Asked, firstMonth: string | undefined, now: string): CallbackQuestion {
  return {
    ...usualQuestion(now),
    ...monthsOf(asked, firstMonth, monthNumber(Date.parse(now))),
    ...(asked.branch === '' ? {} : { branch: asked.branch }),
    ...(asked.range === '' ? {} : { rangeId: asked.range }),
    days: asked.days,
    sameCircuit: asked.circuit === 'same',
    timeScale: asked.scale === 'season' ? 'heating-season days' : 'calendar days',
  }
}

function monthsOf(
  { period, from, to }: Asked,
  firstMonth: string | undefined,
  present: number,
): Pick<CallbackQuestion, 'fromMonth' | 'toMonth'> {
  const first = firstMonth === undefined ? present : Math.min(readMonth(firstMonth), present)
  if (period === 'all') return { fromMonth: monthName(first), toMonth: monthName(present) }
  if (period !== 'chosen')
    return { fromMonth: monthName(present - Number(period) + 1), toMonth: monthName(present) }
  const fromMonth = from === '' ? monthName(first) : from
  const toMonth = to === '' ? monthName(present) : to
  // Turned round, the two months mean the same.
  return fromMonth <= toMonth ? { fromMonth, toMonth } : { fromMonth: toMonth, toMonth: fromMonth }
}
