import { monthBegins, readMonth } from '@/lib/core/callbacks/month'
import { logHref, noFilters } from '../../log/logFilters'
import { askedHref, usualAsked } from '../asked'

const day = (moment: number): string => new Date(moment).toISOString().slice(0, 'yyyy-mm-dd'.length)

/** The entries of one kind that were said in a month. */
function inLog(kind: string, month: string): string {
  const number = readMonth(month)
  const [from, to] = [day(monthBegins(number)), day(monthBegins(number + 1) - 1)]
  return logHref({ ...noFilters, kind, from, to, page: 1 })
}

/** Where the list behind a figure of the letter is, by the key of its row. */
const lists: Readonly<Record<string, (month: string) => string>> = {
  opened: (month) => inLog('case', month),
  callbacks: (month) =>
    askedHref({ ...usualAsked, period: 'chosen', from: month, to: month, open: `month-${month}` }),
  swaps: () => '/swaps',
  swapsMissing: () => '/swaps',
  leftOff: () => '/reports',
  'high co': () => '/reports',
  jumpers: () => '/reports',
  reports: (month) => inLog('report', month),
}

/**
 * The address of the list behind a figure; undefined for a figure that has no list of its own.
 * @param month '2026-01'
 */
export const behindRow = (key: string, month: string): string | undefined => lists[key]?.(month)
