import type { TeamFile } from '../../fold/teamFile'
import { recordKinds } from '../../registry'

const known = new WeakMap<TeamFile, (id: string) => ReadonlySet<string>>()

/**
 * The furnaces that a record is about: the record itself, or those that it leads to by what it names, step by step; a
 * reading by its visit and case, a withdrawal by what it takes back. Joined furnaces are one. A furnace that took the
 * place of another is not about that one.
 *
 * @returns what to ask with a record's id; each answer is worked out once
 */
export function furnacesOf(file: TeamFile): (id: string) => ReadonlySet<string> {
  const answers = new Map<string, ReadonlySet<string>>()
  const ask = (id: string): ReadonlySet<string> => {
    const before = answers.get(id)
    if (before !== undefined) return before
    // Records name older ones only; should two name each other all the same, the second finds this.
    answers.set(id, none)
    const found = workOut(id)
    answers.set(id, found)
    return found
  }
  const workOut = (id: string): ReadonlySet<string> => {
    const record = file.records.get(id)
    if (record === undefined) return none
    if (record.kind === 'furnace') return new Set([file.keptId(id)])
    const named = recordKinds[record.kind]?.refersTo(record.entry.body) ?? []
    const sets = named.map(ask).filter((set) => set.size > 0)
    return sets.length < 2 ? (sets[0] ?? none) : new Set(sets.flatMap((set) => [...set]))
  }
  const asking = known.get(file) ?? ask
  known.set(file, asking)
  return asking
}

const none: ReadonlySet<string> = new Set()
