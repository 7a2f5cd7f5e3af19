import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { WarrantyAnswerBody } from '../kinds/warrantyAnswer'
import { oldestFirst } from './ofFurnace'

type Answer = Entry<WarrantyAnswerBody>

/** Two spellings of one part number: marks between the characters, and capitals, make no other part. */
const partKey = (part: string): string => part.replace(/[^\p{L}\p{N}]/gu, '').toUpperCase()

/** Of one part's answers the later by its day; of one day, the one that was said last. */
export const byDay = (one: Answer, other: Answer): number =>
  one.body.on < other.body.on ? -1 : one.body.on > other.body.on ? 1 : oldestFirst(one, other)

/** The answers about a repair that count or counted once, part by part, each oldest first. What was withdrawn is left out. */
export function answersOfRepair(file: TeamFile, repairId: string): readonly (readonly Answer[])[] {
  return [...answersByPart(file).values()].filter(([first]) => first!.body.repairId === repairId)
}

const known = new WeakMap<TeamFile, ReadonlyMap<string, readonly Answer[]>>()

/** Every answer that counts or counted once, by repair and part, each oldest first. */
export function answersByPart(file: TeamFile): ReadonlyMap<string, readonly Answer[]> {
  const before = known.get(file)
  if (before !== undefined) return before
  const parts = new Map<string, Answer[]>()
  for (const answer of counting(file.warrantyAnswers).sort(byDay)) {
    const key = `${answer.body.repairId} ${partKey(answer.body.partReturned)}`
    const earlier = parts.get(key)
    if (earlier === undefined) parts.set(key, [answer])
    else earlier.push(answer)
  }
  known.set(file, parts)
  return parts
}
