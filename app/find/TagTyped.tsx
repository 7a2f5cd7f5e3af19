import { codeInTagLink, groupedTagCode, readTagCode } from '@/lib/core/tag'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { tagStanding } from '@/lib/records/view/tags'
import { AsPrinted } from '../ui/words/AsPrinted'
import styles from './find.module.css'

type Props = {
  typed: string
  /** It is on file as a number, letter for letter: twelve characters can be a tag's code by chance. */
  isNumber: boolean
  file: TeamFile
}

/** What is typed may be the code on a furnace tag: it leads to its furnace, or to the page that says what is known of it. */
export function TagTyped({ typed, isNumber, file }: Props) {
  const read = readTagCode(typed)
  const code = codeInTagLink(typed.trim()) ?? (read.ok ? read.value : undefined)
  if (code === undefined) {
    if (isNumber || read.ok || read.problem.code !== 'tag-misread') return null
    return (
      <p>
        If this is a furnace tag: {read.problem.message} Or <a href="/scan">scan it</a>.
      </p>
    )
  }
  const standing = tagStanding(file, code)
  if (standing.is === 'on a furnace')
    return (
      <a className={styles.result} href={`/furnace?id=${standing.furnace.id}`}>
        <span className={styles.title}>{standing.furnace.body.siteLabel}</span>
        <span>
          Furnace {standing.furnace.body.model}, by its tag <AsPrinted text={groupedTagCode(code)} />
        </span>
      </a>
    )
  if (isNumber && standing.is === 'on none yet') return null
  return (
    <p>
      That looks like a furnace tag: <a href="/scan">scan it</a> or{' '}
      <a href={`/t?c=${code}`}>open {groupedTagCode(code)}</a>.
    </p>
  )
}
