import { firstDay } from './book'

/** One of a list, each as likely as the others. */
export const pick = <Item>(random: () => number, list: readonly Item[]): Item =>
  list[Math.floor(random() * list.length)]!

/** The list in a random order (Fisher and Yates, as Durstenfeld gave it in 1964); the list itself is unchanged. */
export function shuffled<Item>(random: () => number, list: readonly Item[]): Item[] {
  const order = [...list]
  for (let last = order.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1))
    ;[order[last], order[other]] = [order[other]!, order[last]!]
  }
  return order
}

const dayMs = 24 * 60 * 60 * 1000

const onWeekend = (day: Date): boolean => day.getUTCDay() % 6 === 0
const written = (day: Date): string => day.toISOString().slice(0, 10)

/**
 * A working day of the demo's two years, at least so many days after its first one; a day of the cold half is twice
 * as likely, as the calls are.
 *
 * @param after days after the first day, 0 to 600
 */
export function drawDay(random: () => number, after: number): string {
  for (;;) {
    const days = after + Math.floor(random() * (725 - after))
    const day = new Date(Date.parse(firstDay) + days * dayMs)
    const isCold = day.getUTCMonth() < 3 || day.getUTCMonth() > 8
    if (!onWeekend(day) && (isCold || random() < 0.5)) return written(day)
  }
}

/** The first working day at least so many days after a day, never beyond the demo's end. */
export function workingDayAfter(day: string, days: number, end: string): string {
  const later = new Date(Date.parse(day) + days * dayMs)
  if (written(later) >= end) return end
  return onWeekend(later) ? workingDayAfter(day, days + 1, end) : written(later)
}
