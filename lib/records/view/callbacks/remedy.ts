import { neverFittedIn } from '../../neverFitted'
import type { CaseFile } from '../case/caseFile'

/** What was done on a case, by what it took. A switch that was replaced beside other parts counts as that. */
export const remedies = [
  'switch replaced',
  'another part fitted',
  'put right without a part',
  'no repair on record',
] as const
export type Remedy = (typeof remedies)[number]

/** A repair whose words say that something was put in that is never fitted is none. */
export function remedyOf(file: Pick<CaseFile, 'repairs'>): Remedy {
  const repairs = file.repairs.filter(({ body }) => neverFittedIn(body) === undefined)
  if (repairs.length === 0) return 'no repair on record'
  if (repairs.some(({ body }) => body.switchReplaced === true)) return 'switch replaced'
  return repairs.some(({ body }) => body.fittedPart !== undefined || body.parts !== undefined)
    ? 'another part fitted'
    : 'put right without a part'
}
