import type { RatingStanding } from '@/lib/core/rating'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { behind, newestDate } from '../setpoint/sourceLines'
import { LevelWord } from '../ui/words/LevelWord'
import { Quiet } from '../ui/words/Quiet'

/** What is on file of a switch position: levels and dates, no number. The number comes with its sources, on its card. */
export function OnFile({ setpoint }: { setpoint: Setpoint }) {
  const { rating } = setpoint
  return (
    <span>
      Closes: <Standing standing={rating.closes} setpoint={setpoint} />. Opens:{' '}
      <Standing standing={rating.opens} setpoint={setpoint} />.
      {rating.unstated.level !== 'Not on file' && (
        <>
          {' '}
          Action not stated: <Standing standing={rating.unstated} setpoint={setpoint} />.
        </>
      )}
      {rating.asks.length > 0 && <Quiet inline> Depends on the {rating.asks.join(' and ')}.</Quiet>}
    </span>
  )
}

const Standing = ({ standing, setpoint }: { standing: RatingStanding; setpoint: Setpoint }) =>
  standing.level === 'Not on file' ? (
    <LevelWord level="Not on file" />
  ) : (
    <LevelWord level={standing.level} asOf={newestDate(behind(standing), setpoint.reports)} />
  )
