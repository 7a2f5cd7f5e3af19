/** How long each was watched, and whether the watching ended with the event. */
export type Lifetimes = { times: readonly number[]; events: readonly boolean[] }

/** For every different time with an event: how many had it, and how many were watched up to then. */
export function eventTimes({ times, events }: Lifetimes): { time: number; atRisk: number; events: number }[] {
  const order = times.map((_, place) => place).toSorted((a, b) => times[a]! - times[b]!)
  const rows: { time: number; atRisk: number; events: number }[] = []
  for (let first = 0; first < order.length; ) {
    const time = times[order[first]!]!
    let happened = 0
    let next = first
    for (; next < order.length && times[order[next]!] === time; next++) if (events[order[next]!]) happened++
    if (happened > 0) rows.push({ time, atRisk: order.length - first, events: happened })
    first = next
  }
  return rows
}

/** @throws RangeError naming the function that was asked */
export function checkLifetimes(asked: string, { times, events }: Lifetimes): void {
  if (times.length !== events.length) throw new RangeError(`${asked} requires as many events as times`)
  if (times.some((time) => !(time >= 0 && time < Infinity)))
    throw new RangeError(`${asked} requires times that are numbers, 0 or more`)
}
