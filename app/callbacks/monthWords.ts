import { monthBegins, readMonth } from '@/lib/core/callbacks/month'

/** @example monthWords('2026-01') // 'January 2026' */
export const monthWords = (month: string): string => {
  const begins = new Date(monthBegins(readMonth(month)))
  return `${monthsOfYear[begins.getUTCMonth()]} ${begins.getUTCFullYear()}`
}

export const monthsOfYear = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const
