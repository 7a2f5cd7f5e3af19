import { useEffect, useRef, useState } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CallbackFigures } from '@/lib/records/view/callbacks/callbackFigures'
import { CaseLink } from '../cases/work/CaseLink'
import { Button } from '../ui/form/Button'
import { Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import { backWords } from './backWords'
import type { Behind } from './behind'
import styles from './callbacks.module.css'

/** How many cases of a group are listed at first, and how many more at a press. */
const atOnce = 50

type Props = {
  /** Everything that can be opened here; the one that is open is shown. */
  of: readonly Behind[]
  open: string
  file: TeamFile
  callbacks: CallbackFigures['callbacks']
}

/** The cases behind the figure that is open, if it is one of these, newest first. */
export function OpenedCases({ of, open, file, callbacks }: Props) {
  const behind = of.find(({ key }) => key === open)
  const title = useRef<HTMLHeadingElement>(null)
  const key = behind?.key
  // Whoever opened a figure is led to what it opened.
  useEffect(() => {
    if (key !== undefined) title.current?.focus()
  }, [key])
  if (behind === undefined) return null
  return (
    <section className={styles.opened} aria-label={`Cases behind “${behind.title}”`}>
      <Stack>
        <h3 ref={title} tabIndex={-1}>
          {behind.title}
        </h3>
        {behind.groups().map(({ words, ids }) => (
          <Group key={words} {...{ words, ids, file, callbacks }} />
        ))}
      </Stack>
    </section>
  )
}

type GroupProps = Pick<Props, 'file' | 'callbacks'> & { words: string; ids: readonly string[] }

function Group({ words, ids, file, callbacks }: GroupProps) {
  const [shown, setShown] = useState(atOnce)
  const openedAt = (id: string) => file.cases.get(file.keptId(id))?.at ?? ''
  const newestFirst = ids.toSorted((a, b) => (openedAt(a) < openedAt(b) ? 1 : -1))
  return (
    <div>
      <h4>
        {words}: {ids.length}
      </h4>
      {ids.length === 0 ? (
        <Quiet>None.</Quiet>
      ) : (
        <ul className={styles.cases}>
          {newestFirst.slice(0, shown).map((id) => {
            const callback = callbacks.get(id)
            return (
              <li key={id}>
                <CaseLink id={id} file={file} />
                {callback && (
                  <span className={styles.cameBackAs}>
                    came back ({backWords(callback)}): <CaseLink id={callback.laterId} file={file} />
                  </span>
                )}
              </li>
            )
          })}
        </ul>
      )}
      {ids.length > shown && (
        <Button onClick={() => setShown((count) => count + atOnce)}>
          Show {Math.min(ids.length - shown, atOnce)} more ({ids.length - shown} not shown)
        </Button>
      )}
    </div>
  )
}
