import { useId } from 'react'
import { unitLabel } from '@/lib/core/pressure'
import type { Column } from './column'
import { columnLabels } from './columnLabels'
import { columnScale } from './columnScale'
import { describeColumn } from './describeColumn'
import { Labels, roomForLabels } from './Labels'
import { Mark } from './Mark'
import { across } from './measures'
import { TubeAndDish } from './TubeAndDish'
import { Water } from './Water'
import styles from './waterColumn.module.css'

/**
 * An open tube standing in a shallow dish: suction draws the water up the tube, positive pressure pushes it below
 * the dish line. Rated points are ruled lines with words, a tolerance is hatched, the reading is the water itself
 * with its uncertainty as a soft edge. It illustrates what the text beside it says, and is drawn the same on the
 * server, on the phone and on paper.
 */
export function WaterColumn(column: Column) {
  const id = useId().replace(/[^\w-]/g, '_')
  const labels = columnLabels(column)
  const { heightOf, ticks, frame } = columnScale(column, Math.max(190, roomForLabels(labels) - 40))
  return (
    <svg
      className={styles.column}
      viewBox={`0 0 ${across.width} ${frame.foot + (frame.deep ? 16 : 3)}`}
      role="img"
      aria-label={describeColumn(column)}
    >
      <text className={styles.aside} y={11}>
        {unitLabel[column.unit]}
      </text>
      {column.sense === 'suction' && (
        <text className={styles.aside} y={25}>
          suction
        </text>
      )}
      {frame.deep && (
        <text className={styles.aside} y={frame.foot + 12}>
          pressure
        </text>
      )}
      {ticks.map(({ key, height, words }) => (
        <g key={key}>
          <path
            className={styles.tick}
            d={`M${words ? across.tick : across.tick + 4} ${height}H${across.left}`}
          />
          <text className={styles.figure} x={across.figures} y={height + 4} textAnchor="end">
            {words}
          </text>
        </g>
      ))}
      <Water id={id} column={column} heightOf={heightOf} frame={frame} />
      <TubeAndDish {...frame} />
      {labels.map(
        (label) =>
          label.of === 'mark' && (
            <Mark key={label.key} id={`${id}-${label.key}`} mark={label.mark} heightOf={heightOf} />
          ),
      )}
      <Labels labels={labels} heightOf={heightOf} foot={frame.foot} />
    </svg>
  )
}
