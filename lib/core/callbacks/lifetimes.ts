/** How long each was watched, and whether the watching ended with the event. */
export type Lifetimes = { times: readonly number[]; events: readonly boolean[] }

/** For every different time with an event: how many had it, and how many were watched up to then. */
export function eventTimes({ times, events }: Lifetimes): { time: number; atRisk: number; events: number }[] {
  const timesSorted = new Float64Array(times).sort()
  const rows: { time: number; atRisk: number; events: number }[] = []
  let gone = 0
  for (const time of new Float64Array(times.filter((_, place) => events[place]!)).sort()) {
    const row = rows.at(-1)
    if (row?.time === time) {
      row.events++
      continue
    }
    while (timesSorted[gone]! < time) gone++
    rows.push({ time, atRisk: times.length - gone, events: 1 })
  }
  return rows
}

/** @throws RangeError naming the function that was asked */
export function checkLifetimes(asked: string, { times, events }: Lifetimes): void {
  if (times.length !== events.length) throw new RangeError(`${asked} requires as many events as times`)
  if (times.some((time) => !(time >= 0 && time < Infinity)))
    throw new RangeError(`${asked} requires times that are numbers, 0 or more`)
}
