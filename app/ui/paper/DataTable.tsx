import { type ReactNode, useId } from 'react'
import { classNames } from '../classNames'
import styles from './paper.module.css'

/** A column: `numeric` lines its figures up at the right. */
export type Column<Row> = {
  key: string
  words: ReactNode
  cell: (row: Row) => ReactNode
  numeric?: boolean
}

type Props<Row> = {
  /** What the table shows, always written above it. */
  caption: ReactNode
  columns: readonly Column<Row>[]
  rows: readonly Row[]
  rowKey: (row: Row) => string
  /** What stands in place of the rows when there are none: what, why, and what to do. */
  empty: ReactNode
  /** On a narrow screen each row is a list of named facts, so that none has to be scrolled to. Needs plain words. */
  stacks?: boolean
}

/** A table whose first column names its rows. On a narrow screen it scrolls within its own frame, or stacks. */
export function DataTable<Row>({ caption, columns, rows, rowKey, empty, stacks }: Props<Row>) {
  const captionId = useId()
  if (rows.length === 0) return <>{empty}</>
  return (
    <div className={styles.tableFrame}>
      <table className={classNames(styles.table, stacks && styles.stacks)} aria-labelledby={captionId}>
        <caption id={captionId}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.key} scope="col" className={classNames(column.numeric && styles.numeric)}>
                {column.words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={rowKey(row)}>
              {columns.map((column, index) =>
                index === 0 ? (
                  <th key={column.key} scope="row">
                    {column.cell(row)}
                  </th>
                ) : (
                  <td
                    key={column.key}
                    className={classNames(column.numeric && styles.numeric)}
                    data-words={stacks && typeof column.words === 'string' ? column.words : undefined}
                  >
                    {column.cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
