import { findingById } from '@/lib/catalogue/findings'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { newestFindings } from '@/lib/records/view/case/observed'
import { FindingRow } from './FindingRow'
import type { CaseWork } from './useCaseWork'
import styles from './work.module.css'

type Props = { ids: readonly string[]; view: CaseView; work: CaseWork; mayAdd: boolean }

/** Findings to tap, in the order given; those that come from readings are left to the readings. */
export function FindingRows({ ids, view, work, mayAdd }: Props) {
  const newest = newestFindings(view.file.findings)
  const rows = ids.flatMap((id) => {
    const finding = findingById(id)
    return finding?.asked === 'by a person' ? [finding] : []
  })
  return (
    <ul className={styles.findings}>
      {rows.map((finding) => (
        <FindingRow
          key={finding.id}
          finding={finding}
          said={newest.get(finding.id)}
          mayAdd={mayAdd}
          contradicted={view.dangers.contradicted.has(finding.id)}
          mayTakeBack={work.mayTakeBack(newest.get(finding.id))}
          say={(value) => work.say(finding.id, value)}
        />
      ))}
    </ul>
  )
}
