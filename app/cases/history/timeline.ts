import { onTheClock } from './momentWords'
import type { Told } from './told'

type FindingTold = Extract<Told, { kind: 'finding' }>

/** One line of a timeline: something said, or findings that one person tapped one after another. */
export type Line = Exclude<Told, FindingTold> | { kind: 'findings'; entries: readonly FindingTold['entry'][] }

/** What was said on one day of one zone’s clock. */
export type Day = { day: string; zone: string; lines: Line[] }

/**
 * What was said, day by day in its order. Findings of one person that follow each other become one line.
 * @param minutesAhead the zone whose days are meant; that of this device where it is left out
 */
export function timelineOf(told: readonly Told[], minutesAhead?: number): Day[] {
  const days: Day[] = []
  for (const one of told) {
    const { day, zone } = onTheClock(one.entry.at, minutesAhead)
    let last = days.at(-1)
    if (last?.day !== day || last.zone !== zone) {
      last = { day, zone, lines: [] }
      days.push(last)
    }
    if (one.kind !== 'finding') {
      last.lines.push(one)
      continue
    }
    const before = last.lines.at(-1)
    const goesOn =
      before?.kind === 'findings' &&
      before.entries[0]?.by === one.entry.by &&
      before.entries[0].body.visitId === one.entry.body.visitId
    if (goesOn) last.lines.splice(-1, 1, { ...before, entries: [...before.entries, one.entry] })
    else last.lines.push({ kind: 'findings', entries: [one.entry] })
  }
  return days
}
