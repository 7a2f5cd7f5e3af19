import type { TeamFile } from '@/lib/records/fold/teamFile'
import { causeOf } from '@/lib/records/view/case/pastCases'
import { DateWords } from '../../ui/words/DateWords'
import { sayDate } from '../../ui/words/sayDate'
import { capitalised } from '../work/capitalised'
import { causeName } from '../work/causeName'
import type { CaseRow } from './caseRows'
import { caseViewIn } from './caseViewIn'
import { knownWords } from './filterWords'
import styles from './list.module.css'

type Props = {
  row: CaseRow
  file: TeamFile
  now: string
  /** The furnace is known already: its own page. */
  ofOneFurnace?: boolean
}

/** A case in the list: where, what for, since when, how it stands, why, and whether it repeats another. */
export function CaseLine({ row: { entry, furnace }, file, now, ofOneFurnace = false }: Props) {
  const view = caseViewIn(file, entry.id)
  const cause = view && causeOf(file, view, now)
  const before = view?.file.earlier[0]
  const { siteLabel, model, branch } = furnace.body
  return (
    <div className={styles.case}>
      <a className={styles.opens} href={`/case?id=${entry.id}`}>
        {!ofOneFurnace && (
          <span className={styles.site}>
            {siteLabel} <span translate="no">{model}</span>
          </span>
        )}
        <span className={styles.complaint}>{entry.body.complaint}</span>
      </a>
      <p>
        Opened <DateWords at={entry.at} />
        {!ofOneFurnace && branch !== undefined && `, ${branch}`}.{' '}
        {view !== undefined && <b>{capitalised(view.standing)}.</b>}{' '}
        {cause !== undefined && `Cause, ${knownWords[cause.status]}: ${causeName(cause.main)}.`}
      </p>
      {before !== undefined && (
        <p>
          <a href={`/case/history?id=${before.id}`}>Repeats the case of {sayDate(before.at)}</a>
        </p>
      )}
    </div>
  )
}
