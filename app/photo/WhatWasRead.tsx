import type { Entry } from '@/lib/records/fold/entry'
import type { ReportBody } from '@/lib/records/kinds/report'
import { secondReadingOf } from '@/lib/records/view/ratingReports'
import { useDeviceState } from '../device/deviceContext'
import { Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { actionWords } from '../ui/words/actionWords'
import { sayDate } from '../ui/words/sayDate'

type Props = {
  readings: readonly Entry<ReportBody>[]
  /** The picture can be looked at: without it two readings can't be held against each other. */
  isHeld: boolean
}

/** The reports that were read off one photo, letter for letter, and whether two people read the same. */
export function WhatWasRead({ readings, isHeld }: Props) {
  const { file, names } = useDeviceState()
  const readers = new Set(readings.map(({ by }) => by))
  const alone = readings.filter((report) => secondReadingOf(report, file) === undefined)
  return (
    <Stack>
      <ul>
        {readings.map(({ id, body, by, at }) => (
          <li key={id}>
            <AsPrinted text={body.asWritten} />, {actionWords[body.action].name.toLowerCase()}:{' '}
            <a href={`/record?id=${id}`}>
              {names.get(by) ?? 'somebody'}, {sayDate(at)}
            </a>
          </li>
        ))}
      </ul>
      {readers.size > 1 && alone.length === 0 && (
        <p>Two people read the same off it, each alone: a misreading is ruled out.</p>
      )}
      {isHeld && readers.size > 1 && alone.length > 0 && (
        <p>
          Not everybody read the same off it. Look at it together; whoever misread it withdraws that report.
        </p>
      )}
    </Stack>
  )
}
