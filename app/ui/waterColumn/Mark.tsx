import type { ColumnMark } from './column'
import { across } from './measures'
import styles from './waterColumn.module.css'

type Props = { id: string; mark: ColumnMark; heightOf: (pascals: number) => number }

const rules = { closes: styles.closes, opens: styles.opens, 'not stated': styles.unstated }
/** How far the hatching of a one-sided limit runs before it has faded out. */
const fade = 26

/** A rated point: a ruled line across the tube, its tolerance hatched. A one-sided limit fades out on its open side. */
export function Mark({ id, mark, heightOf }: Props) {
  const { pascals, toleranceAbove = 0, toleranceBelow = 0 } = mark
  const line = heightOf(pascals)
  const towardsMore = Math.sign(heightOf(1) - heightOf(0))
  const open = { nominal: 0, maximum: -towardsMore * fade, minimum: towardsMore * fade }[mark.limit]
  const ends = [heightOf(pascals + toleranceAbove), heightOf(pascals - toleranceBelow), line + open]
  const start = Math.min(...ends)
  const band = {
    x: across.left,
    y: start,
    width: across.right - across.left,
    height: Math.max(...ends) - start,
  }
  return (
    <g>
      {band.height > 0 && (
        <>
          <pattern
            id={`${id}-hatch`}
            width="5"
            height="5"
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(${mark.action === 'opens' ? -45 : 45})`}
          >
            <path className={styles.hatch} d="M0 0V5" />
          </pattern>
          <linearGradient id={`${id}-fade`} x1="0" x2="0" y1={open < 0 ? 1 : 0} y2={open < 0 ? 0 : 1}>
            <stop offset="0" stopColor="white" />
            <stop offset="1" stopColor={open === 0 ? 'white' : 'black'} />
          </linearGradient>
          <mask id={`${id}-mask`} maskUnits="userSpaceOnUse" {...band}>
            <rect fill={`url(#${id}-fade)`} {...band} />
          </mask>
          <rect fill={`url(#${id}-hatch)`} mask={`url(#${id}-mask)`} {...band} />
        </>
      )}
      <path className={rules[mark.action]} d={`M${across.lineStart} ${line}H${across.lineEnd}`} />
    </g>
  )
}
