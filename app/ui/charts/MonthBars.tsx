import { scaleBand, scaleLinear } from 'd3-scale'
import styles from './charts.module.css'
import { MonthAxis } from './MonthAxis'
import type { MarkLink } from './mark'

/** One month: how many there were, how many of them have all that is wanted, and how many a part of it. */
export type MonthBar = { month: string; whole: number; part: number; of: number; says: string }

const height = 244
const [left, right, top, foot] = [34, 26, 22, 206]
const narrowest = 26

type Props = {
  months: readonly MonthBar[]
  width: number
  label: string
  linkOf: (month: string) => MarkLink
}

/** Counts by month: filled what is whole, hatched what is a part, empty the rest. */
export function MonthBars({ months, width, label, linkOf }: Props) {
  const wide = Math.max(width, left + right + months.length * narrowest)
  const names = months.map(({ month }) => month)
  const across = scaleBand(names, [left, wide - right])
  const most = Math.max(1, ...months.map(({ of }) => of))
  const up = scaleLinear([0, most], [foot, top])
  const breadth = Math.min(28, across.bandwidth() * 0.62)
  return (
    <svg className={styles.picture} viewBox={`0 0 ${wide} ${height}`} width={wide} aria-label={label}>
      <g className={styles.axis} aria-hidden>
        {up
          .ticks(4)
          .filter(Number.isInteger)
          .map((count) => (
            <g key={count}>
              <path className={styles.grid} d={`M${left} ${up(count)}H${wide - right}`} />
              <text x={left - 6} y={up(count) + 4} textAnchor="end">
                {count}
              </text>
            </g>
          ))}
      </g>
      {months.map(({ month, whole, part, of, says }) => {
        const [x, from] = [across(month)!, across(month)! + (across.bandwidth() - breadth) / 2]
        const { href, isOpen, onClick } = linkOf(month)
        return (
          <a
            key={month}
            className={styles.mark}
            href={href}
            aria-label={says}
            aria-expanded={isOpen}
            onClick={onClick}
          >
            <rect className={styles.hit} x={x} y={top} width={across.bandwidth()} height={foot - top} />
            <rect className={styles.empty} x={from} y={up(of)} width={breadth} height={foot - up(of)} />
            <path className={styles.part} d={strokes(from, breadth, up(whole + part), up(whole))} />
            <rect className={styles.full} x={from} y={up(whole)} width={breadth} height={foot - up(whole)} />
          </a>
        )
      })}
      <MonthAxis months={names} across={across} y={foot + 20} />
    </svg>
  )
}

/** Level strokes 4 apart, so that a part is told from a whole without colour. */
function strokes(x: number, breadth: number, from: number, to: number): string {
  const rows: string[] = []
  for (let y = from + 2; y < to; y += 4) rows.push(`M${x} ${y}h${breadth}`)
  return rows.join('')
}
