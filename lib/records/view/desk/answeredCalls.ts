import { callSources } from '@/lib/catalogue/sources'
import { plainSpelling } from '@/lib/core/find'
import type { Entry } from '../../fold/entry'
import type { ReportBody } from '../../kinds/report'
import { savedTogether } from '../savedTogether'

/** What stands before the name in the origin of a report that was given by telephone. */
const called = /^call (.+)$/

/**
 * Who was rung for a report: by its call’s reference, else, where none was given, by its origin. Undefined for what was
 * not said by telephone, or where nobody wrote down whom.
 */
export function organisationRung({
  proof,
  source,
  origin,
}: Pick<ReportBody, 'proof' | 'source' | 'origin'>): string | undefined {
  if (proof?.kind === 'call reference') return proof.organisation
  return proof === undefined && callSources.some((each) => each === source)
    ? called.exec(origin ?? '')?.[1]
    : undefined
}

const referenceOf = ({ body: { proof } }: Entry<ReportBody>): string | undefined =>
  proof?.kind === 'call reference' ? plainSpelling(proof.reference) : undefined

/** One ticket is one call, whenever its numbers were typed in; without one, so is what was saved in one step. */
function sameCall(one: Entry<ReportBody>, other: Entry<ReportBody>): boolean {
  const [reference, another] = [referenceOf(one), referenceOf(other)]
  return reference === undefined && another === undefined ? savedTogether(one, other) : reference === another
}

/**
 * What one organisation said, call by call: the make and the break that it named in one breath are one answer.
 * @param said in the order in which it is to stand
 * @param reportOf the report of a thing that is said
 */
export function byCall<Said>(
  said: readonly Said[],
  reportOf: (one: Said) => Entry<ReportBody>,
): [Said, ...Said[]][] {
  const calls: [Said, ...Said[]][] = []
  for (const one of said) {
    const call = calls.find(([first]) => sameCall(reportOf(first), reportOf(one)))
    if (call === undefined) calls.push([one])
    else call.push(one)
  }
  return calls
}
