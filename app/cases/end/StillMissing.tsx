import type { ReactNode } from 'react'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import type { EndingNeed } from '@/lib/records/view/case/endingNeeds'
import { leadingBack } from '../../equipment/form/returnTo'
import { repairHref } from '../../furnace/repairForm'
import styles from './end.module.css'

type Props = { title: ReactNode; needs: readonly EndingNeed[]; ofCase: CaseFile; visitId: string }

/** What an ending still lacks, each with the way to where it is recorded. Nothing where it lacks nothing. */
export function StillMissing({ title, needs, ofCase, visitId }: Props) {
  if (needs.length === 0) return null
  return (
    <section aria-labelledby="still-missing">
      <h2 id="still-missing">{title}</h2>
      <ul className={styles.needs}>
        {needs.map((need) => (
          <li key={need.sentence}>
            <a href={placeOf(need, ofCase, visitId)}>{need.sentence}</a>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Where something that is missing is recorded: further up on this page, or on another, which leads back here. */
function placeOf(need: EndingNeed, { entry, furnace, notices }: CaseFile, visitId: string): string {
  const here = `/case/end?id=${entry.id}&visit=${visitId}`
  switch (need.at) {
    case 'ending':
      return `#end-${need.field}`
    case 'dangers':
      return `/case?id=${entry.id}#case-danger`
    case 'switch':
      return `/case?id=${entry.id}#switch`
    case 'repairs':
      return leadingBack(repairHref({ furnaceId: furnace.id, caseId: entry.id, visitId }), here)
    case 'furnace':
      return leadingBack(`/furnace/add?again=${furnace.id}`, here)
    case 'readings':
      return `/case?id=${entry.id}#readings`
    case 'combustion':
      return `/case?id=${entry.id}#combustion`
    case 'notice': {
      const standing = notices.findLast(({ lifting }) => lifting === undefined)
      return standing === undefined
        ? shutDownHref(furnace.id, entry.id, visitId)
        : `/notice?id=${standing.entry.id}`
    }
  }
}

/** The form of the notice that ends a visit as left off. */
export const shutDownHref = (furnaceId: string, caseId: string, visitId: string): string =>
  `/case/shut-down?${new URLSearchParams({ furnace: furnaceId, case: caseId, visit: visitId })}`
