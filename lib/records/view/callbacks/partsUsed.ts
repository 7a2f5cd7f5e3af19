import type { TeamFile } from '@/lib/records/fold/teamFile'
import { neverFittedPart } from '../../neverFitted'
import type { CaseFile } from '../case/caseFile'

/** Something that a repair used: a factory part by its number, or material in the words that were typed. */
export type PartUsed = { key: string; words: string }

/** Everything that the repairs of a case used, each thing once; what may never be fitted counts as no part. */
export function partsUsed(team: TeamFile, { repairs }: Pick<CaseFile, 'repairs'>): PartUsed[] {
  const used = new Map<string, PartUsed>()
  for (const { body } of repairs) {
    const part = body.fittedPart === undefined ? undefined : team.parts.get(team.keptId(body.fittedPart))
    if (part !== undefined) used.set(part.id, { key: part.id, words: part.body.partNumber })
    const words = body.parts?.trim() ?? ''
    // Two people who typed the same, one of them with a capital, meant the same.
    const key = words.toLowerCase()
    if (words !== '' && neverFittedPart(words) === undefined && !used.has(key)) used.set(key, { key, words })
  }
  return [...used.values()]
}
