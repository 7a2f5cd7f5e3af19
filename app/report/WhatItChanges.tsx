import type { FurnaceRating } from '@/lib/core/rating'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { actionWords } from '../ui/words/actionWords'
import { VerdictList } from './VerdictList'
import type { Verdict } from './verdicts'

type Props = {
  /** What the rating would be, from `onceSaved`. */
  after: FurnaceRating
  setpoint: Setpoint
  verdicts: readonly Verdict[]
  /** What the report lacks to settle the dispute that it is in, or that it lacks nothing. */
  settles: readonly string[]
}

/** What the rating would be with this report, said before it is saved: first the report itself, then what it moves. */
export function WhatItChanges({ after, setpoint, verdicts, settles }: Props) {
  const moved = (['closes', 'opens', 'unstated'] as const).flatMap((key) => {
    const before = setpoint.rating[key]
    const then = after[key]
    const name = actionWords[key === 'unstated' ? 'not stated' : key].name
    return then.level === before.level && then.pascals === before.pascals
      ? []
      : [`${name}: ${before.level} now. Would stand as: ${then.level}.`]
  })
  return (
    <div role="status">
      <p>Nothing of this is on file yet. Once the report is saved:</p>
      <VerdictList verdicts={verdicts} />
      {[...new Set(settles)].map((words) => (
        <p key={words}>{words}</p>
      ))}
      <ul>
        {moved.length === 0 ? (
          <li>The rating stays as it is.</li>
        ) : (
          moved.map((line) => <li key={line}>{line}</li>)
        )}
      </ul>
    </div>
  )
}
