import type { SourceKind } from '@/lib/core/vocabulary'
import { demoDay } from './book'
import { positions } from './catalogue'
import { drawDay, pick, shuffled, twoYearsBefore, workingDayAfter } from './drawing'
import { makers } from './makers'
import { notes } from './notes'
import { sisterOf } from './positions'
import type { Team } from './team'
import { type Telling, tellings } from './tellings'

/** Nothing is ever told of these: a request is open, or nobody has asked yet. */
const silent: readonly string[] = [
  'Rill Two 100 / Low fire',
  'Rill Two 100 / High fire',
  'Sallow V 090 / Middle fire',
  'Marl Two 105 / Low fire',
  'Fennel Sense 100 / Pressure sensor',
]

/** In what order a position's rating becomes known; each list is as likely as the others. */
const histories: readonly (readonly Telling[])[] = [
  ['page'],
  ['page', 'label'],
  ['page', 'counter'],
  ['binder', 'page', 'label'],
  ['counter'],
  ['counter', 'counter'],
  ['remembered', 'counter'],
  ['listing', 'page'],
  ['label', 'support'],
  ['binder', 'bench'],
  ['binder'],
  ['support'],
]

/**
 * Tells of positions that the hand-written cases leave alone, in random order, until so many reports are on file.
 * What is told is the true rating, with the mistakes that people make. Some positions are left without any.
 *
 * @param count of all reports, the hand-written ones included
 */
export function drawReports(team: Team, random: () => number, count: number): void {
  const left = positions.filter(({ key }) => !silent.includes(key) && team.reportCount(key) === 0)
  const noteFor = noteDrawer(random)
  for (const { key: at, range, place } of shuffled(random, left)) {
    const band = Math.floor(random() * makers[range.maker].bands.length)
    const revision = Math.floor(random() * (range.family.revisions?.length ?? 1))
    const sister = sisterOf[place]
    const scene = {
      team,
      random,
      at,
      band,
      revision,
      noteFor,
      points: team.points(at, { band, revision }),
      sister: sister && team.points(`${range.key} / ${sister}`, { band, revision }),
    }
    let on = drawDay(random, 15)
    for (const telling of pick(random, histories)) {
      // The sheets were on the shelf all along, and copied in the first two winters.
      const toldOn = telling === 'page' ? twoYearsBefore(on) : on
      const missing = count - team.reportCount()
      if (missing <= 0) return
      tellings[telling]({ ...scene, on: toldOn, closeOnly: missing === 1 })
      on = workingDayAfter(on, 6 + Math.floor(random() * 80), demoDay)
    }
  }
}

/** Hands out each remark once, and for about half of the tellings none. */
function noteDrawer(random: () => number): (source: SourceKind) => string | undefined {
  const left = new Map(
    Object.entries(notes).map(([source, remarks]) => [source, shuffled(random, remarks)] as const),
  )
  return (source) => (random() < 0.5 ? left.get(source)?.pop() : undefined)
}
