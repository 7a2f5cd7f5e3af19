import { scaleLinear } from 'd3-scale'
import { classNames } from '../classNames'
import styles from './charts.module.css'

type Props = {
  share: number
  interval: readonly [number, number]
  /** The right end of the scale; rows of one table share it. */
  upTo: number
  /** Where all together lie. */
  centre?: number
  few?: boolean
}

const [width, height] = [132, 28]

/** A share with its interval on a scale that a column of a table shares. The cells beside it say the same. */
export function IntervalMark({ share, interval: [low, high], upTo, centre, few = false }: Props) {
  const across = scaleLinear([0, upTo], [6, width - 6]).clamp(true)
  return (
    <svg className={styles.row} viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden>
      <path className={styles.grid} d={`M6 ${height / 2}H${width - 6}`} />
      {centre !== undefined && <path className={styles.centre} d={`M${across(centre)} 2V${height - 2}`} />}
      <path className={styles.whisker} d={`M${across(low)} ${height / 2}H${across(high)}`} />
      {!few && <circle className={classNames(styles.point)} cx={across(share)} cy={height / 2} r={5} />}
    </svg>
  )
}
