import { DataTable } from '../../ui/paper/DataTable'
import { monthWords } from '../monthWords'
import { behindRow } from './behindRow'
import styles from './letter.module.css'
import type { LetterParts, LetterRow } from './letterParts'

type FigureProps = { row: LetterRow; of: 'month' | 'before'; month: string }

/** A figure of the letter; on the screen it leads to the list behind it. */
function LetterFigure({ row, of, month }: FigureProps) {
  const href = behindRow(row.key, month)
  if (href === undefined) return row[of]
  return (
    <a href={href} className={styles.figure} aria-label={`${row.words}, ${monthWords(month)}: ${row[of]}`}>
      {row[of]}
    </a>
  )
}

/** The letter as it is printed. */
export function LetterPaper({ parts }: { parts: LetterParts }) {
  const { title, standing, means, columns, months, rows, todoTitle, todos, nothingTodo, foot } = parts
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
          cell: (row: LetterRow) =>
            key === 'month' || key === 'before' ? (
              <LetterFigure {...{ row, of: key, month: months[place - 1]! }} />
            ) : (
              row[key]
            ),
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
