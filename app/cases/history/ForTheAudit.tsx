import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { Facts } from '../../ui/paper/Facts'
import { auditFacts } from './auditFacts'
import type { Told } from './told'

type Props = {
  told: readonly Told[]
  file: TeamFile
  ofCase: CaseFile
  names: ReadonlyMap<string, string>
}

/** What whoever checks a case asks first, each with what is on record of it or that nothing is. */
export const ForTheAudit = (props: Props) => (
  <section aria-labelledby="audit-title">
    <h2 id="audit-title">For whoever checks this case</h2>
    <Facts facts={auditFacts(props)} />
  </section>
)
