import { scaleBand, scaleLinear } from 'd3-scale'
import { area, curveStepBefore, line } from 'd3-shape'
import { classNames } from '../classNames'
import styles from './charts.module.css'
import { MonthAxis } from './MonthAxis'
import type { MarkLink } from './mark'

/** One month: its share, and the limits it lies within, where there are any. */
export type ControlMonth = {
  month: string
  /** 0 to 1; left out for a month in which nothing was counted. */
  share?: number
  limits?: { lower: number; centre: number; upper: number }
  verdict?: 'within' | 'above' | 'below'
  /** Open: the count will grow. */
  look: 'settled' | 'open'
  /** Made from so few cases that it is no rate: drawn small and hollow. */
  few: boolean
  /** The month in words, for whoever cannot see the mark. */
  says: string
}

const height = 264
const [left, right, top, foot] = [46, 26, 12, 222]
/** A month is never narrower: its mark is to be hit. */
const narrowest = 26

type Props = {
  months: readonly ControlMonth[]
  width: number
  label: string
  linkOf: (month: string) => MarkLink
}

/** Shares by month with limits that widen where less was counted. What lies outside is ringed and named. */
export function ControlChart({ months, width, label, linkOf }: Props) {
  const wide = Math.max(width, left + right + months.length * narrowest)
  const names = months.map(({ month }) => month)
  const across = scaleBand(names, [left, wide - right])
  const highest = Math.max(
    0.1,
    ...months.map(({ share = 0 }) => share),
    // The limits of a month of few jobs may reach over the edge: they would press all others flat.
    ...months.map(({ few, limits }) => (few ? 0 : (limits?.upper ?? 0))),
  )
  const edgeOfPicture = Math.min(1, highest * 1.08)
  const up = scaleLinear([0, edgeOfPicture], [foot, top]).clamp(true)
  const limited = months.flatMap(({ month, limits }) =>
    limits === undefined ? [] : [{ from: across(month)!, to: across(month)! + across.step(), ...limits }],
  )
  // Each month's limits run over its whole breadth.
  const corners = limited.flatMap((one) => [
    { ...one, x: one.from },
    { ...one, x: one.to },
  ])
  const edge = (of: 'lower' | 'centre' | 'upper') =>
    line<(typeof corners)[number]>(
      ({ x }) => x,
      (one) => up(one[of]),
    ).defined((one) => one[of] <= edgeOfPicture)(corners) ?? undefined
  const band = area<(typeof corners)[number]>(
    ({ x }) => x,
    ({ lower }) => up(lower),
    ({ upper }) => up(upper),
  ).curve(curveStepBefore)
  const last = limited.at(-1)
  return (
    <svg className={styles.picture} viewBox={`0 0 ${wide} ${height}`} width={wide} aria-label={label}>
      <g className={styles.axis} aria-hidden>
        {up.ticks(4).map((share) => (
          <g key={share}>
            <path className={styles.grid} d={`M${left} ${up(share)}H${wide - right}`} />
            <text x={left - 6} y={up(share) + 4} textAnchor="end">
              {Math.round(100 * share)} %
            </text>
          </g>
        ))}
      </g>
      <g aria-hidden>
        <path className={styles.band} d={band(corners) ?? undefined} />
        <path className={styles.limit} d={edge('upper')} />
        <path className={styles.limit} d={edge('lower')} />
        <path className={styles.centre} d={edge('centre')} />
        {last && (
          <text className={styles.note} x={last.to - 4} y={up(last.centre) - 5} textAnchor="end">
            all together
          </text>
        )}
      </g>
      {months.map(({ month, share, look, few, verdict, says }) => {
        const [x, middle] = [across(month)!, across(month)! + across.bandwidth() / 2]
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
            {share !== undefined && (
              <>
                {verdict !== undefined && verdict !== 'within' && (
                  <circle className={styles.ring} cx={middle} cy={up(share)} r={few ? 6 : 9} />
                )}
                <circle
                  className={classNames(few ? styles.empty : styles.point, look === 'open' && styles.hollow)}
                  cx={middle}
                  cy={up(share)}
                  r={few ? 2.5 : look === 'open' ? 4.5 : 5}
                />
              </>
            )}
          </a>
        )
      })}
      <MonthAxis months={names} across={across} y={foot + 20} />
    </svg>
  )
}
