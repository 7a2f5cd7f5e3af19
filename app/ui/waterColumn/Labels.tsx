import type { ColumnLabel } from './columnLabels'
import { layoutLabels } from './layoutLabels'
import { across, labelGap, lineHeight } from './measures'
import styles from './waterColumn.module.css'

type Props = { labels: readonly ColumnLabel[]; heightOf: (pascals: number) => number; foot: number }

/** Height that the labels take up together. */
export function roomForLabels(labels: readonly ColumnLabel[]): number {
  return labels.reduce((sum, { lines }) => sum + lines.length * lineHeight + labelGap, 0)
}

/** The words beside the tube, none over another, each led to its line. */
export function Labels({ labels, heightOf, foot }: Props) {
  const places = layoutLabels(
    labels.map(({ key, pascals, lines }) => ({
      key,
      anchor: heightOf(pascals),
      height: lines.length * lineHeight,
    })),
    { top: 0, bottom: foot, gap: labelGap },
  )
  return labels.map(({ key, lines, pascals, of }) => {
    const middle = places.find((place) => place.key === key)?.middle ?? 0
    const first = middle - ((lines.length - 2) * lineHeight) / 2 - 4
    return (
      <g key={key} className={styles[of]}>
        <path
          className={styles.leader}
          d={`M${across.lineEnd} ${heightOf(pascals)}L${across.words - 4} ${middle}`}
        />
        <text>
          {lines.map((line, at) => (
            <tspan key={line} x={across.words} y={first + at * lineHeight}>
              {/* Read out or copied, the lines are words of one sentence. */}
              {at < lines.length - 1 ? `${line} ` : line}
            </tspan>
          ))}
        </text>
      </g>
    )
  })
}
