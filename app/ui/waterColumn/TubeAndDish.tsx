import type { Frame } from './columnScale'
import { across, dishDepth, rim } from './measures'
import styles from './waterColumn.module.css'

/** The glass: an open tube, a shallow dish, and a well below the dish where pressure needs the depth. */
export function TubeAndDish({ dishLine, tubeTop, tubeFoot, foot, deep }: Frame) {
  const { left, right, dishLeft, dishRight, wellLeft, wellRight } = across
  const corner = 5
  const dishFoot = deep ? dishLine + dishDepth : foot
  const well = deep ? `H${wellLeft}V${foot}H${wellRight}V${dishFoot}` : ''
  return (
    <g className={styles.glass}>
      <path
        d={`M${dishLeft} ${dishLine - rim}V${dishFoot - corner}q0 ${corner} ${corner} ${corner}${well}H${dishRight - corner}q${corner} 0 ${corner} ${-corner}V${dishLine - rim}`}
      />
      <path d={`M${left} ${tubeTop}V${tubeFoot}M${right} ${tubeTop}V${tubeFoot}`} />
    </g>
  )
}
