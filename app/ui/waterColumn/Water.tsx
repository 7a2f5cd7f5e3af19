import type { Column } from './column'
import type { ColumnScale, Frame } from './columnScale'
import { across, dishDepth } from './measures'
import styles from './waterColumn.module.css'

type Props = { id: string; column: Column; heightOf: ColumnScale['heightOf']; frame: Frame }

/** The water in dish and tube. Its edge in the tube is as soft as the reading is uncertain. */
export function Water({ id, column, heightOf, frame }: Props) {
  const { left, right, dishLeft, dishRight, wellLeft, wellRight } = across
  const { dishLine, tubeTop, foot, deep } = frame
  const { reading, earlier = [] } = column
  const dishFoot = deep ? dishLine + dishDepth : foot
  const bore = { x: left, width: right - left }
  const level = reading ? heightOf(reading.pascals) : dishLine
  const softness = reading ? Math.abs(heightOf(reading.uncertaintyPascals) - heightOf(0)) : 0
  const full = Math.min(level + softness, foot)
  return (
    <g>
      <linearGradient id={`${id}-edge`} x1="0" y1="1" x2="0" y2="0">
        <stop offset="0" className={styles.soft} />
        <stop offset="1" className={styles.gone} />
      </linearGradient>
      <rect
        className={styles.water}
        x={dishLeft}
        y={dishLine}
        width={dishRight - dishLeft}
        height={dishFoot - dishLine}
        rx={4}
      />
      {deep && (
        <rect
          className={styles.water}
          x={wellLeft}
          y={dishFoot - 4}
          width={wellRight - wellLeft}
          height={foot - dishFoot + 4}
        />
      )}
      <rect className={styles.empty} {...bore} y={tubeTop} height={frame.tubeFoot - tubeTop} />
      {/* The two overlap by a hair, or a light seam would show between them. */}
      <rect className={styles.water} {...bore} y={full - 0.5} height={foot - full + 0.5} />
      {softness > 0 && (
        <rect fill={`url(#${id}-edge)`} {...bore} y={level - softness} height={full - level + softness} />
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
