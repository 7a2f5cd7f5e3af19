'use client'

import { useState } from 'react'
import { Empty } from '../../ui/answers/Empty'
import { Button } from '../../ui/form/Button'
import { DateWords } from '../../ui/words/DateWords'
import { Quiet } from '../../ui/words/Quiet'
import { sayAge } from '../../ui/words/sayAge'
import { countOf } from '../countOf'
import styles from './leftUndone.module.css'
import type { UndoneList } from './undoneList'

/** As many as fit on a screen of a desk; the others are a button away, and on paper what is shown. */
const listed = 10

/** One list of things left undone: what it holds, how many, each with its age and the way to it. */
export function UndoneSection({ list, now }: { list: UndoneList; now: string }) {
  const { key, title, means, items, empty } = list
  const [whole, setWhole] = useState(false)
  const shown = whole ? items : items.slice(0, listed)
  return (
    <section id={key} aria-labelledby={`${key}-title`} className={styles.section}>
      <h2 id={`${key}-title`}>
        {title} <span className={styles.count}>{items.length}</span>
      </h2>
      <Quiet>{means}</Quiet>
      {items.length === 0 ? (
        <Empty {...empty} />
      ) : (
        <ol className={styles.items} aria-label={title}>
          {shown.map(({ key: item, href, words, since, more }) => (
            <li key={item}>
              <a href={href}>{words}</a>
              <p>
                {since !== undefined && (
                  <>
                    <DateWords at={since} />, {sayAge(since, now)}:{' '}
                  </>
                )}
                {more}
              </p>
            </li>
          ))}
        </ol>
      )}
      {shown.length < items.length && (
        <div className={styles.rest}>
          <p>
            The first {shown.length} of {items.length}.
          </p>
          <Button onClick={() => setWhole(true)}>
            Show {countOf(items.length - shown.length, 'more', 'more')}
          </Button>
        </div>
      )}
    </section>
  )
}
