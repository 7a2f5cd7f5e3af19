import type { ScaleBand } from 'd3-scale'
import { sayMonth } from '../words/sayMonth'
import styles from './charts.module.css'

/** Pixels that the name of a month takes. */
const nameWidth = 62

/** The names of months below a picture, as many as there is room for, the newest always among them. */
export function MonthAxis({
  months,
  across,
  y,
}: {
  months: readonly string[]
  across: ScaleBand<string>
  y: number
}) {
  const every = Math.max(1, Math.ceil(nameWidth / across.step()))
  return (
    <g className={styles.axis} aria-hidden>
      {months.map((month, place) =>
        (months.length - 1 - place) % every === 0 ? (
          <text key={month} x={across(month)! + across.bandwidth() / 2} y={y} textAnchor="middle">
            {sayMonth(month)}
          </text>
        ) : null,
      )}
    </g>
  )
}
