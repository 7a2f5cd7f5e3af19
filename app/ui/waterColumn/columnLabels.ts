import { pressureNumeral } from '@/lib/core/pressure'
import type { Column, ColumnMark } from './column'

/** Words beside the tube, and the magnitude that they belong to. The first line is the one that counts. */
export type ColumnLabel = { key: string; pascals: number; lines: string[] } & (
  | { of: 'mark'; mark: ColumnMark }
  | { of: 'reading' | 'earlier' }
)

const verbs = { closes: ['closes'], opens: ['opens'], 'not stated': ['action', 'not stated'] } as const
const limits = { nominal: [], maximum: ['maximum'], minimum: ['minimum'] } as const

/** Every label of a column. A mark's word is never without the level of its standing, and says so while that is not on file. */
export function columnLabels({ unit, marks, reading, earlier = [] }: Column): ColumnLabel[] {
  const labels: ColumnLabel[] = marks.map((mark, index) => ({
    key: `mark-${index}`,
    pascals: mark.pascals,
    lines: [
      ...verbs[mark.action],
      ...limits[mark.limit],
      ...(mark.onceSaved ? ['would be'] : []),
      mark.standing.level,
    ],
    of: 'mark',
    mark,
  }))
  if (reading) {
    const lines = [pressureNumeral(reading.pascals, unit), 'reading']
    labels.push({ key: 'reading', pascals: reading.pascals, lines, of: 'reading' })
  }
  const latest = earlier.at(-1)
  if (latest) labels.push({ key: 'earlier', pascals: latest.pascals, lines: ['earlier'], of: 'earlier' })
  return labels
}
