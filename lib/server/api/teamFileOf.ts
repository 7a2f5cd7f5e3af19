import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Role } from '@/lib/records/envelope'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import { withheldSince } from '@/lib/records/fold/withheldSince'
import { dataFolder, theLog } from '../database'
import { store } from '../people/store'
import { heldPictures, pictureNews } from '../photos/pictureTable'

/**
 * Kinds that are said in the work on a case, by far the most of a log, and that no rating, part or furnace rests on.
 * Every other kind is folded, those that are still to come as well.
 */
const ofCaseWork: ReadonlySet<string> = new Set([
  'case',
  'visit',
  'finding',
  'reading',
  'baseline',
  'combustion test',
  'ending',
  'shut-down notice',
  'lifting',
  'danger answer',
  'fitted part',
  'switch check',
  'preference',
  'warranty answer',
])

type Kept = {
  records: Map<string, HeldRecord>
  next: number
  pictures: number
  file: TeamFile
  busy: Promise<unknown>
}

// On globalThis, because development reloads modules, and each route is built apart from the others.
const kept = globalThis as typeof globalThis & { inchwaterTeamFiles?: Map<string, Kept> }
kept.inchwaterTeamFiles ??= new Map()

/** How many records are read between two turns of the event loop. */
const pageSize = 500

/**
 * What the log folds into as far as a role may see it and ratings, parts and furnaces rest on it, up to date. It is kept
 * like on a device: only what is new is read, and it is folded again only when some of that matters.
 */
export async function teamFileOf(role: Role): Promise<TeamFile> {
  const key = `${dataFolder()} ${role}`
  const one = kept.inchwaterTeamFiles!.get(key) ?? {
    records: new Map(),
    next: 0,
    pictures: 0,
    file: foldTeamFile([]),
    busy: Promise.resolve(),
  }
  kept.inchwaterTeamFiles!.set(key, one)
  // One after the other: two at once would read the same records twice.
  const turn = one.busy.then(() => catchUp(one, role))
  one.busy = turn.catch(() => {})
  await turn
  return one.file
}

async function catchUp(one: Kept, role: Role): Promise<void> {
  let changed = false
  for (let more = true; more; ) {
    const changes = theLog().readChanges({ after: one.next, role, limit: pageSize })
    const matter = changes.records.filter(({ kind }) => !ofCaseWork.has(kind))
    for (const record of matter) one.records.set(record.id, record)
    for (const record of withheldSince(matter, (id) => one.records.get(id)))
      one.records.set(record.id, record)
    changed ||= matter.length > 0
    one.next = changes.next
    more = changes.more
    if (more) await nextTurn()
  }
  // A photo is a proof only while its picture is held, so pictures that came or went matter too.
  const { database } = store()
  const pictures = newestNews(database, one.pictures)
  changed ||= pictures !== one.pictures
  one.pictures = pictures
  if (changed) one.file = foldTeamFile([...one.records.values()], new Set(heldPictures(database)))
}

function newestNews(database: Parameters<typeof pictureNews>[0], after: number): number {
  let { next, more } = pictureNews(database, { after, limit: pageSize })
  while (more) ({ next, more } = pictureNews(database, { after: next, limit: pageSize }))
  return next
}
