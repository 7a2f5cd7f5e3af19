'use client'

import type { Lesson } from '@/lib/records/view/sourceTrust'
import { useDeviceState } from '../device/deviceContext'
import { rangeWords } from '../equipment/candidates'
import { sourceLine } from '../setpoint/sourceLines'
import { actionWords } from '../ui/words/actionWords'
import { sayDate } from '../ui/words/sayDate'

/** The disputes behind a figure, each with the report that it was about and the record that settled it. */
export function Lessons({ lessons }: { lessons: readonly Lesson[] }) {
  const { file, names } = useDeviceState()
  return (
    <ul>
      {lessons.map(({ settlement, report, held }) => {
        const position = file.positions.get(file.keptId(settlement.body.positionId))
        const range = position && file.ranges.get(file.keptId(position.body.rangeId))
        const { words, href, date } = sourceLine(report, file, names)
        return (
          <li key={`${settlement.id} ${report.id}`}>
            <b>{held ? 'Held' : 'Overruled'}</b>: <a href={href}>{words}</a>, {sayDate(date)}, for{' '}
            {[position?.body.name, range && rangeWords(file, range)].filter(Boolean).join(', ')} (
            {actionWords[settlement.body.action].name}).{' '}
            <a href={`/record?id=${settlement.id}`}>Settled {sayDate(settlement.at)}</a>
          </li>
        )
      })}
    </ul>
  )
}
