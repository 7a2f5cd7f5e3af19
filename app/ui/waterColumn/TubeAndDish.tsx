import type { ColumnScale } from './columnScale'
import { across } from './measures'
import styles from './waterColumn.module.css'

const rim = 7

/** The glass: an open tube, a shallow dish, and a well below the dish where pressure needs the depth. */
export function TubeAndDish({ scale, foot }: { scale: ColumnScale; foot: number }) {
  const { left, right, dishLeft, dishRight, wellLeft, wellRight, dishDepth } = across
  const { dishLine, highest, lowest } = scale
  const dishFoot = dishLine + dishDepth
  const deep = lowest > dishLine + 1
  const tubeTop = Math.min(highest, dishLine - 24) - 10
  const tubeFoot = foot - (deep ? 8 : 7)
  const dish = deep
    ? `M${dishLeft} ${dishLine - rim}V${dishFoot}H${wellLeft}V${foot}H${wellRight}V${dishFoot}H${dishRight}V${dishLine - rim}`
    : `M${dishLeft} ${dishLine - rim}V${foot}H${dishRight}V${dishLine - rim}`
  return (
    <g className={styles.glass}>
      <path d={dish} />
      <path d={`M${left} ${tubeTop}V${tubeFoot}M${right} ${tubeTop}V${tubeFoot}`} />
    </g>
  )
}
