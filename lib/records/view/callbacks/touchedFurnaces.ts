import type { TeamFile } from '@/lib/records/fold/teamFile'
import { furnacesNamed } from '../furnacesNamed'

type Held = NonNullable<ReturnType<TeamFile['records']['get']>>

/** Kinds of which no fact of a case is made. */
export const besideTheFacts: ReadonlySet<string> = new Set([
  'rating request',
  'call attempt',
  'answer seen',
  'asks too',
  'promise',
  'organisation',
  'preference',
  'tag',
  'warranty answer',
  // What they take back, bring in or blank is another record, which differs itself.
  'import',
  'imported lines',
  'withdrawal',
  'withholding',
])

/** Kinds that are of a furnace: by their own word, by their case, or by their notice. */
const ofOneFurnace: ReadonlySet<string> = new Set([
  'furnace',
  'case',
  'visit',
  'ending',
  'finding',
  'reading',
  'combustion test',
  'repair',
  'switch check',
  'danger answer',
  'fitted part',
  'found fitted',
  'baseline',
  'shut-down notice',
  'lifting',
])

/** Records compared between two turns of the screen. */
const atOnce = 2000

/**
 * The furnaces whose cases may have other facts in one team file than in another; 'any' where something differs that
 * is of all furnaces: a part, a switch position, a gauge, or which records are one. What a furnace's cases amount to is
 * made of its own records beside these: those that name it, and those that name a case on it or its notice. When a
 * record is taken in they belong together, but once a join is taken back its case may be on another furnace than it
 * names.
 */
export function* touchedFurnaces(
  before: TeamFile,
  after: TeamFile,
): Generator<void, ReadonlySet<string> | 'any'> {
  // A photo is a proof of a rating, by which a named switch is judged, only with its picture.
  if (!isTheSameSet(before.picturesHeld, after.picturesHeld)) return 'any'
  const touched = new Set<string>()
  let isOfAll = false
  const touch = (file: TeamFile, { kind, entry }: Held): void => {
    if (besideTheFacts.has(kind)) return
    if (!ofOneFurnace.has(kind)) isOfAll = true
    if (kind === 'furnace') touched.add(file.keptId(entry.id))
    for (const furnaceId of furnacesNamed(file, entry)) touched.add(furnaceId)
  }
  let [compared, left] = [0, before.records.size]
  for (const [id, held] of after.records) {
    if (++compared % atOnce === 0) yield
    const then = before.records.get(id)
    if (then !== undefined) left -= 1
    if (then !== undefined && isTheSame(held, then)) continue
    touch(after, held)
    if (then !== undefined) touch(before, then)
    if (isOfAll) return 'any'
  }
  // A log only grows, but what waited on this device and was refused leaves the file again.
  if (left > 0)
    for (const [id, then] of before.records) {
      if (++compared % atOnce === 0) yield
      if (!after.records.has(id)) touch(before, then)
    }
  return isOfAll ? 'any' : touched
}

const isTheSameSet = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean =>
  one.size === other.size && [...one].every((each) => other.has(each))

/** A record that nothing was done to keeps its body through every fold. */
const isTheSame = ({ entry, seq }: Held, other: Held): boolean =>
  entry.body === other.entry.body &&
  entry.at === other.entry.at &&
  entry.by === other.entry.by &&
  entry.withdrawn?.id === other.entry.withdrawn?.id &&
  entry.sameAs === other.entry.sameAs &&
  seq === other.seq
