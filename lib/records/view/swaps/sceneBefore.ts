import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { furnacesNamed } from '../furnacesNamed'

/** What is about the trade and the team as a whole, and bears on what is judged of a furnace. */
const ofTheTeam = [
  'makers',
  'ranges',
  'positions',
  'parts',
  'supersessions',
  'gauges',
  'reports',
  'settlements',
  'photos',
] as const

/** What is about one furnace, or about one case on it. */
const ofAFurnace = [
  'furnaces',
  'cases',
  'visits',
  'findings',
  'readings',
  'combustionTests',
  'repairs',
  'endings',
  'switchChecks',
  'dangerAnswers',
  'fittedParts',
  'foundFitted',
  'baselines',
  'shutDownNotices',
  'liftings',
] as const

type AnyEntry = Entry<Record<string, unknown>>
type Entries = readonly AnyEntry[]
type Shared = Pick<TeamFile, (typeof ofTheTeam)[number]>
type OfFurnace = ReadonlyMap<(typeof ofAFurnace)[number], Entries>

/** Sorted once for a whole team file: what is of each furnace, and when anything of the whole team changed. */
type SceneIndex = {
  byFurnace: ReadonlyMap<string, OfFurnace>
  changes: readonly string[]
  shared: Map<number, Shared>
}

const indexes = new WeakMap<TeamFile, SceneIndex>()
const nothing: ReadonlyMap<string, never> = new Map<string, never>()

/**
 * The team file as it stood just before a moment, as far as it bears on one furnace: nothing that was said at that
 * moment or later, and what was withdrawn later still counting. Records that were joined stay joined: that two
 * records name one thing was true before anybody said so. What is of a case on the furnace is of the furnace, whichever
 * it names itself. Requests, calls, warranty answers and preferences are left out, because no rating and no case is
 * judged by them. Whether a photo's picture is held is taken from now: no record says when it came.
 * @param moment ISO 8601, UTC
 */
export function sceneBefore(file: TeamFile, furnaceId: string, moment: string): TeamFile {
  const { byFurnace, changes, shared } = indexOf(file)
  const changed = countBefore(changes, moment)
  const team = shared.get(changed) ?? sharedBefore(file, moment)
  shared.set(changed, team)
  const here = byFurnace.get(file.keptId(furnaceId))
  const then = (kind: (typeof ofAFurnace)[number]) => before(here?.get(kind) ?? [], moment)
  const scene = Object.fromEntries(ofAFurnace.map((kind) => [kind, then(kind)]))
  return {
    ...(scene as unknown as Pick<TeamFile, (typeof ofAFurnace)[number]>),
    ...team,
    requests: nothing,
    asksToo: nothing,
    promises: nothing,
    organisations: nothing,
    callAttempts: nothing,
    answersSeen: nothing,
    tags: nothing,
    warrantyAnswers: nothing,
    imports: nothing,
    importedFrom: file.importedFrom,
    preferences: nothing,
    picturesHeld: file.picturesHeld,
    records: file.records,
    keptId: file.keptId,
    clockShifts: file.clockShifts,
    unknown: file.unknown,
  }
}

const sharedBefore = (file: TeamFile, moment: string): Shared =>
  Object.fromEntries(ofTheTeam.map((kind) => [kind, before(all(file[kind]), moment)])) as unknown as Shared

const all = (entries: ReadonlyMap<string, Entry<object>>): Entries => [...entries.values()] as AnyEntry[]

function before(entries: Entries, moment: string): Map<string, AnyEntry> {
  const then = new Map<string, AnyEntry>()
  for (const entry of entries) {
    if (entry.at >= moment) continue
    const { withdrawn, ...standing } = entry
    then.set(entry.id, withdrawn !== undefined && withdrawn.at >= moment ? standing : entry)
  }
  return then
}

function indexOf(file: TeamFile): SceneIndex {
  const known = indexes.get(file)
  if (known !== undefined) return known
  const changes = ofTheTeam
    .flatMap((kind) => all(file[kind]))
    .flatMap(({ at, withdrawn }) => (withdrawn === undefined ? [at] : [at, withdrawn.at]))
    .sort()
  const index = { byFurnace: sortedByFurnace(file), changes, shared: new Map() }
  indexes.set(file, index)
  return index
}

function sortedByFurnace(file: TeamFile): Map<string, Map<(typeof ofAFurnace)[number], AnyEntry[]>> {
  const furnaces = new Map<string, Map<(typeof ofAFurnace)[number], AnyEntry[]>>()
  for (const kind of ofAFurnace) {
    for (const entry of all(file[kind])) {
      const ids = kind === 'furnaces' ? [file.keptId(entry.id)] : furnacesNamed(file, entry)
      for (const id of ids) {
        const here = furnaces.get(id) ?? new Map<(typeof ofAFurnace)[number], AnyEntry[]>()
        furnaces.set(id, here)
        const ofKind = here.get(kind)
        if (ofKind === undefined) here.set(kind, [entry])
        else ofKind.push(entry)
      }
    }
  }
  return furnaces
}

/** How many of the moments, in order, lie before one. */
function countBefore(moments: readonly string[], moment: string): number {
  let low = 0
  let high = moments.length
  while (low < high) {
    const middle = (low + high) >>> 1
    if (moments[middle]! < moment) low = middle + 1
    else high = middle
  }
  return low
}
