import { DataTable } from '../../ui/paper/DataTable'
import styles from './letter.module.css'
import type { LetterParts, LetterRow } from './letterParts'

/** The letter as it is printed. */
export function LetterPaper({ parts }: { parts: LetterParts }) {
  const { title, standing, means, columns, rows, todoTitle, todos, nothingTodo, foot } = parts
  const cells = ['words', 'month', 'before', 'change'] as const satisfies readonly (keyof LetterRow)[]
  return (
    <article className={styles.letter} aria-labelledby="letter-title">
      <h2 id="letter-title">{title}</h2>
      <p>{standing}</p>
      <p className={styles.means}>{means}</p>
      <DataTable
        caption="The month’s figures"
        rows={rows}
        rowKey={({ key }) => key}
        columns={cells.map((key, place) => ({
          key,
          words: columns[place],
          numeric: place > 0,
          cell: (row: LetterRow) => row[key],
        }))}
        empty={null}
      />
      <h3>{todoTitle}</h3>
      {todos.length === 0 && <p>{nothingTodo}</p>}
      <ul className={styles.todos}>
        {todos.map(({ key, words, todo, first }) => (
          <li key={key}>
            <a href={`/left-undone#${key}`}>{words}</a>. {todo}
            <span className={styles.first}>{first.join('; ')}</span>
          </li>
        ))}
      </ul>
      {foot.map((sentence) => (
        <p key={sentence} className={styles.foot}>
          {sentence}
        </p>
      ))}
    </article>
  )
}
