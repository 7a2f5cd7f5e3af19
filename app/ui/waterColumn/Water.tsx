import type { Column } from './column'
import type { ColumnScale } from './columnScale'
import { across } from './measures'
import styles from './waterColumn.module.css'

type Props = { id: string; column: Column; scale: ColumnScale; level: number; foot: number }

/** The water in dish and tube. Its edge in the tube is as soft as the reading is uncertain. */
export function Water({ id, column, scale, level, foot }: Props) {
  const { left, right, dishLeft, dishRight, wellLeft, wellRight, dishDepth } = across
  const { dishLine, lowest, heightOf } = scale
  const deep = lowest > dishLine + 1
  const dishFoot = deep ? dishLine + dishDepth : foot
  const { reading, earlier = [] } = column
  const softness = reading ? Math.abs(heightOf(reading.uncertaintyPascals) - heightOf(0)) : 0
  const full = Math.min(level + softness, foot)
  return (
    <g>
      <defs>
        <linearGradient id={`${id}-edge`} x1="0" y1="1" x2="0" y2="0">
          <stop offset="0" className={styles.soft} />
          <stop offset="1" className={styles.gone} />
        </linearGradient>
      </defs>
      <path className={styles.water} d={`M${dishLeft} ${dishLine}H${dishRight}V${dishFoot}H${dishLeft}Z`} />
      {deep && (
        <path className={styles.water} d={`M${wellLeft} ${dishFoot}H${wellRight}V${foot}H${wellLeft}Z`} />
      )}
      <rect className={styles.empty} x={left} y={0} width={right - left} height={foot - 6} />
      <rect className={styles.water} x={left} y={full} width={right - left} height={foot - full} />
      {softness > 0 && (
        <rect
          fill={`url(#${id}-edge)`}
          x={left}
          y={level - softness}
          width={right - left}
          height={softness * 2}
        />
      )}
      {earlier.length > 0 && (
        <path
          className={styles.before}
          d={earlier.map(({ pascals }) => `M${left} ${heightOf(pascals)}H${right}`).join('')}
        />
      )}
      {reading && <path className={styles.level} d={`M${left} ${level}H${across.lineEnd}`} />}
    </g>
  )
}
