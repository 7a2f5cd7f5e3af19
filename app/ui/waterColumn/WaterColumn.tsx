import { useId } from 'react'
import { unitLabel } from '@/lib/core/pressure'
import type { Column } from './column'
import { columnLabels } from './columnLabels'
import { columnScale } from './columnScale'
import { describeColumn } from './describeColumn'
import { layoutLabels } from './layoutLabels'
import { Mark } from './Mark'
import { across, lineHeight } from './measures'
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
  const heights = labels.map(({ lines }) => lines.length * lineHeight)
  const needed = heights.reduce((sum, height) => sum + height + across.labelGap, 0)
  const top = column.sense === 'pressure' ? 52 : 28
  const bottom = top + Math.max(196, needed - 24)
  const scale = columnScale(column, top, bottom)
  const foot = Math.max(scale.lowest + 12, scale.dishLine + across.dishDepth)
  const places = layoutLabels(
    labels.map(({ key, pascals }, index) => ({
      key,
      anchor: scale.heightOf(pascals),
      height: heights[index] ?? 0,
    })),
    { top: 2, bottom: foot, gap: across.labelGap },
  )
  const placeOf = (key: string) => places.find((place) => place.key === key)?.middle ?? 0
  const level = column.reading ? scale.heightOf(column.reading.pascals) : scale.dishLine

  return (
    <svg
      className={styles.column}
      viewBox={`0 0 ${across.width} ${foot + 4}`}
      role="img"
      aria-label={describeColumn(column)}
    >
      <text className={styles.unit} x={across.figures} y={12} textAnchor="end">
        {unitLabel[column.unit]}
      </text>
      {scale.ticks.map(({ key, height, words }) => (
        <g key={key}>
          <path
            className={styles.tick}
            d={`M${words ? across.tick : across.tick + 3} ${height}H${across.left}`}
          />
          {words && (
            <text className={styles.figure} x={across.figures} y={height + 4} textAnchor="end">
              {words}
            </text>
          )}
        </g>
      ))}
      <Water id={id} column={column} scale={scale} level={level} foot={foot} />
      <TubeAndDish scale={scale} foot={foot} />
      {labels.map(
        (label) =>
          label.of === 'mark' && (
            <Mark key={label.key} id={`${id}-${label.key}`} mark={label.mark} heightOf={scale.heightOf} />
          ),
      )}
      {labels.map(({ key, lines, pascals, of }, index) => {
        const anchor = scale.heightOf(pascals)
        const middle = placeOf(key)
        const first = middle - (heights[index] ?? 0) / 2 + lineHeight - 3
        return (
          <g key={key} className={styles[of]}>
            <path
              className={styles.leader}
              d={`M${across.lineEnd} ${anchor}L${across.words - 3} ${middle}`}
            />
            <text>
              {lines.map((line, at) => (
                <tspan key={line} x={across.words} y={first + at * lineHeight}>
                  {line}
                </tspan>
              ))}
            </text>
          </g>
        )
      })}
    </svg>
  )
}
