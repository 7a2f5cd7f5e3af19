import type { TeamFile } from '@/lib/records/fold/teamFile'
import { leftOffWithoutNotice } from '@/lib/records/view/case/leftOff'
import { noticesOf } from '@/lib/records/view/case/notices'
import { shutDownHref } from '../cases/end/StillMissing'
import { sayDate } from '../ui/words/sayDate'
import styles from './furnace.module.css'

type Props = { furnaceId: string; file: TeamFile; names: ReadonlyMap<string, string> }

/**
 * Stands above everything while a furnace is left off: since when, by whom, why, and until what. Where a visit left it
 * off without a notice, that is said, with the way to write it.
 */
export function LeftOffBanner({ furnaceId, file, names }: Props) {
  const standing = noticesOf(file, furnaceId).filter(({ lifting }) => lifting === undefined)
  const nameOf = (person: string) => names.get(person) ?? 'somebody whose name is not on this device'
  return (
    <>
      {standing.map(({ entry: { id, by, body } }) => (
        <section key={id} aria-label="Left off" className={styles.leftOff}>
          <p>
            <b>
              Left off {sayDate(body.on)} by {nameOf(by)}
            </b>
            , because: {body.found}
          </p>
          <p>
            <b>Do not relight until:</b> {body.doNotRelightUntil}
          </p>
          <p>
            <a href={`/notice?id=${id}`}>The shut-down notice</a>
          </p>
        </section>
      ))}
      {leftOffWithoutNotice(file, furnaceId).map(({ id, at, by, body: { caseId, visitId } }) => (
        <section key={id} aria-label="Left off" className={styles.leftOff}>
          <p>
            <b>
              Left off {sayDate(file.visits.get(visitId)?.body.on ?? at.slice(0, 10))} by {nameOf(by)}
            </b>
            , and no shut-down notice says why.
          </p>
          <p>
            <b>Do not relight</b> until the notice is written and lifted.{' '}
            <a href={`/case/history?id=${caseId}`}>What was found on that visit</a>
          </p>
          <p>
            <a href={shutDownHref(furnaceId, caseId, visitId)}>Write the shut-down notice</a>
          </p>
        </section>
      ))}
    </>
  )
}
