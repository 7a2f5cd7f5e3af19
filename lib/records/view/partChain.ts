import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { PartBody } from '../kinds/part'
import type { SupersessionBody } from '../kinds/supersession'

/** One factory part and how it came to be the current one. */
export type PartLink = {
  part: Entry<PartBody>
  /** The record that says this part replaces the one before it; none for the first. */
  supersededBy?: Entry<SupersessionBody>
}

/**
 * The line of part numbers that a part belongs to, oldest first, current last. One part can replace several and
 * be replaced by several; the line shows the newest statement at each step, and stops rather than go in a circle.
 */
export function partChain(file: TeamFile, partId: string): PartLink[] {
  const supersessions = counting(file.supersessions)
  const oldest = walk(
    file.keptId(partId),
    (id) => supersessions.filter((s) => file.keptId(s.body.newPartId) === id),
    (s) => file.keptId(s.body.oldPartId),
  )
  const first = oldest.at(-1)!.id
  const newestFirst = walk(
    first,
    (id) => supersessions.filter((s) => file.keptId(s.body.oldPartId) === id),
    (s) => file.keptId(s.body.newPartId),
  )
  return newestFirst.flatMap(({ id, by }) => {
    const part = file.parts.get(id)
    return part === undefined ? [] : [{ part, ...(by === undefined ? {} : { supersededBy: by }) }]
  })
}

type Step = { id: string; by?: Entry<SupersessionBody> }

function walk(
  from: string,
  stepsAt: (id: string) => Entry<SupersessionBody>[],
  next: (supersession: Entry<SupersessionBody>) => string,
): Step[] {
  const steps: Step[] = [{ id: from }]
  for (;;) {
    const newest = stepsAt(steps.at(-1)!.id).toSorted((a, b) => (a.at < b.at ? 1 : -1))[0]
    if (newest === undefined || steps.some((step) => step.id === next(newest))) return steps
    steps.push({ id: next(newest), by: newest })
  }
}

/** Whether a later number replaces this one. */
export const isSuperseded = (file: TeamFile, partId: string): boolean =>
  counting(file.supersessions).some((entry) => file.keptId(entry.body.oldPartId) === file.keptId(partId))
