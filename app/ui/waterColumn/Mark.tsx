import type { ColumnMark } from './column'
import { across } from './measures'
import styles from './waterColumn.module.css'

type Props = { id: string; mark: ColumnMark; heightOf: (pascals: number) => number }

const rules = { closes: styles.closes, opens: styles.opens, 'not stated': styles.unstated }
/** How far the hatching of an open-ended limit runs before it has faded out. */
const fade = 26

/** A rated point: a ruled line across the tube, its tolerance hatched. A one-sided limit fades out on its open side. */
export function Mark({ id, mark, heightOf }: Props) {
  const line = heightOf(mark.pascals)
  const above = heightOf(mark.pascals + (mark.toleranceAbove ?? 0))
  const below = heightOf(mark.pascals - (mark.toleranceBelow ?? 0))
  const open =
    mark.limit === 'nominal'
      ? 0
      : Math.sign(heightOf(0) - heightOf(1)) * (mark.limit === 'maximum' ? fade : -fade)
  const [start, end] = [Math.min(above, below, line + open), Math.max(above, below, line + open)]
  const turn = mark.action === 'opens' ? -45 : 45
  return (
    <g>
      {end > start && (
        <>
          <defs>
            <pattern
              id={`${id}-hatch`}
              width="5"
              height="5"
              patternUnits="userSpaceOnUse"
              patternTransform={`rotate(${turn})`}
            >
              <path className={styles.hatch} d="M0 0V5" />
            </pattern>
            <linearGradient id={`${id}-fade`} x1="0" x2="0" y1={open < 0 ? 1 : 0} y2={open < 0 ? 0 : 1}>
              <stop offset="0" stopColor="white" />
              <stop offset="1" stopColor={open === 0 ? 'white' : 'black'} />
            </linearGradient>
            <mask
              id={`${id}-mask`}
              maskUnits="userSpaceOnUse"
              x={across.left}
              y={start}
              width={across.right - across.left}
              height={end - start}
            >
              <rect
                fill={`url(#${id}-fade)`}
                x={across.left}
                y={start}
                width={across.right - across.left}
                height={end - start}
              />
            </mask>
          </defs>
          <rect
            fill={`url(#${id}-hatch)`}
            mask={`url(#${id}-mask)`}
            x={across.left}
            y={start}
            width={across.right - across.left}
            height={end - start}
          />
        </>
      )}
      <path className={rules[mark.action]} d={`M${across.lineStart} ${line}H${across.lineEnd}`} />
    </g>
  )
}
