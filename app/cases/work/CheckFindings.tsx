import type { CheckEntry } from '@/lib/catalogue/checks'
import { findingById, seenOrRuledOut } from '@/lib/catalogue/findings'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { newestFindings } from '@/lib/records/view/case/observed'
import { Button } from '../../ui/form/Button'
import { FindingRows } from './FindingRows'
import type { CaseWork } from './useCaseWork'

type Props = { check: CheckEntry; view: CaseView; work: CaseWork; mayAdd: boolean }

/** What a check may show, to tap; where it can only be there or not, one tap rules out all that is left. */
export function CheckFindings({ check, ...rest }: Props) {
  const newest = newestFindings(rest.view.file.findings)
  const left = check.reveals.filter((id) => {
    const finding = findingById(id)
    return finding?.values === seenOrRuledOut && finding.asked === 'by a person' && !newest.has(id)
  })
  return (
    <>
      <FindingRows {...rest} ids={check.reveals} />
      {rest.mayAdd && left.length > 1 && (
        <Button onClick={() => void rest.work.ruleOut(left)}>Looked: none of these {left.length}</Button>
      )}
    </>
  )
}
