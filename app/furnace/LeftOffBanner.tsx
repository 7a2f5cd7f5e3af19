import type { TeamFile } from '@/lib/records/fold/teamFile'
import { noticesOf } from '@/lib/records/view/case/notices'
import { sayDate } from '../ui/words/sayDate'
import styles from './furnace.module.css'

type Props = { furnaceId: string; file: TeamFile; names: ReadonlyMap<string, string> }

/** Stands above everything while a furnace is left off: since when, by whom, why, and until what. */
export function LeftOffBanner({ furnaceId, file, names }: Props) {
  const standing = noticesOf(file, furnaceId).filter(({ lifting }) => lifting === undefined)
  return standing.map(({ entry: { id, by, body } }) => (
    <section key={id} aria-label="Left off" className={styles.leftOff}>
      <p>
        <b>
          Left off {sayDate(body.on)} by {names.get(by) ?? 'somebody whose name is not on this device'}
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
  ))
}
