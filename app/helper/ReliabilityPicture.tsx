import { scaleLinear, scaleSqrt } from 'd3-scale'
import type { ReliabilityRow } from '@/lib/core/diagnosis'
import { perCent } from '../cases/work/chanceWords'
import { fewestForShare } from './figureWords'
import styles from './helper.module.css'

const width = 360
const height = 320
const left = 58
const foot = 276
const right = 338
const top = 12

/** Chances that are written along both sides. */
const figures = [0, 0.25, 0.5, 0.75, 1] as const

/**
 * How often the first cause was the true one, over the chance that it had been given: a point for every tenth, larger
 * with more cases, with the interval of its share. A point of few cases is hollow. The table beside it says the same.
 */
export function ReliabilityPicture({ rows }: { rows: readonly ReliabilityRow[] }) {
  const across = scaleLinear().domain([0, 1]).range([left, right])
  const up = scaleLinear().domain([0, 1]).range([foot, top])
  const most = Math.max(1, ...rows.map(({ cases }) => cases))
  const radius = scaleSqrt().domain([0, most]).range([2.5, 9])
  return (
    <svg className={styles.picture} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={describe(rows)}>
      {figures.map((figure) => (
        <g key={figure}>
          <path
            className={styles.grid}
            d={`M${left} ${up(figure)}H${right}M${across(figure)} ${foot}V${top}`}
          />
          <text x={left - 6} y={up(figure) + 4} textAnchor="end">
            {perCent(figure)}
          </text>
          <text x={across(figure)} y={foot + 17} textAnchor="middle">
            {perCent(figure)}
          </text>
        </g>
      ))}
      <path className={styles.asSaid} d={`M${across(0)} ${up(0)}L${across(1)} ${up(1)}`} />
      <text className={styles.side} x={across(0.5)} y={height - 8} textAnchor="middle">
        chance given to its first cause
      </text>
      <text className={styles.side} transform={`translate(11 ${up(0.5)}) rotate(-90)`} textAnchor="middle">
        it was the true one
      </text>
      {rows.map(({ from, forecast, came, cases }) => (
        <g key={from} className={cases < fewestForShare ? styles.few : styles.point}>
          <path d={`M${across(forecast)} ${up(came.interval95[0])}V${up(came.interval95[1])}`} />
          <circle cx={across(forecast)} cy={up(came.rate)} r={radius(cases)} />
        </g>
      ))}
    </svg>
  )
}

function describe(rows: readonly ReliabilityRow[]): string {
  const said = rows.map(
    ({ from, to, came }) =>
      `given ${perCent(from)} to ${perCent(to)}, right in ${came.hits} of ${came.cases}`,
  )
  return `How sure the helper was against how often it was right: ${said.join('; ')}.`
}
