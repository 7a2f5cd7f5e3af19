import styles from './leftUndone.module.css'
import type { UndoneList } from './undoneList'

/** Every list by its name and how much is in it, each the way to it. */
export const AtAGlance = ({ lists }: { lists: readonly UndoneList[] }) => (
  <nav aria-label="Lists on this page">
    <ul className={styles.glance}>
      {lists.map(({ key, title, items }) => (
        <li key={key}>
          <a href={`#${key}`}>
            <b>{items.length}</b> {title}
          </a>
        </li>
      ))}
    </ul>
  </nav>
)
