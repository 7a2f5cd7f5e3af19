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

export const dayMs = 24 * 60 * 60 * 1000

/** From this day on the team asked and rang around for ratings in earnest. */
const askingBegan = '2024-11-21'

const onWeekend = (day: Date): boolean => day.getUTCDay() % 6 === 0
const written = (day: Date): string => day.toISOString().slice(0, 10)

/**
 * A working day of the demo's last two years, when most was asked and told, at least so many days after their first
 * one; a day of the cold half is twice as likely, as the calls are.
 *
 * @param after days after the first day of the two years, 0 to 600
 */
export function drawDay(random: () => number, after: number): string {
  for (;;) {
    const days = after + Math.floor(random() * (725 - after))
    const day = new Date(Date.parse(askingBegan) + days * dayMs)
    const isCold = day.getUTCMonth() < 3 || day.getUTCMonth() > 8
    if (!onWeekend(day) && (isCold || random() < 0.5)) return written(day)
  }
}

/** A working day two years before another. */
export const twoYearsBefore = (day: string): string =>
  workingDayAfter(`${Number(day.slice(0, 4)) - 2}${day.slice(4)}`, 0, day)

/** The first working day at least so many days after a day, never beyond the demo's end. */
export function workingDayAfter(day: string, days: number, end: string): string {
  const later = new Date(Date.parse(day) + days * dayMs)
  if (written(later) >= end) return end
  return onWeekend(later) ? workingDayAfter(day, days + 1, end) : written(later)
}

/** True as often as the chance says. @param likely 0 to 1 */
export const happens = (random: () => number, likely: number): boolean => random() < likely

/** A number of a span, each as likely as another. */
export const drawn = (random: () => number, [from, to]: readonly [number, number]): number =>
  from + random() * (to - from)

/** One of a list, as likely as its weight says. @throws RangeError where no weight is above 0 */
export function pickWeighted<Item>(
  random: () => number,
  list: readonly Item[],
  weightOf: (item: Item) => number,
): Item {
  const sum = list.reduce((total, item) => total + weightOf(item), 0)
  if (!(sum > 0)) throw new RangeError('The demo has nothing to pick from: no weight is above 0')
  let left = random() * sum
  for (const item of list) {
    left -= weightOf(item)
    if (left < 0) return item
  }
  return list.findLast((item) => weightOf(item) > 0)!
}

/** A number of the standard normal distribution (G. E. P. Box & M. E. Muller, 1958). */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** The working day before a day. */
export function workingDayBefore(day: string): string {
  const before = new Date(Date.parse(day) - dayMs)
  return onWeekend(before) ? workingDayBefore(written(before)) : written(before)
}
