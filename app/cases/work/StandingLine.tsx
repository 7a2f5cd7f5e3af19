import { formatPressure } from '@/lib/core/pressure'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../../device/deviceContext'
import { usePreference } from '../../device/usePreference'
import { setpointQuery } from '../../setpoint/setpointAddress'
import { behind, linesFor, newestDate } from '../../setpoint/sourceLines'
import { LevelWord } from '../../ui/words/LevelWord'

/** Make and break of a position in a line each, with level and date: a number never stands alone. */
export function StandingLine({ setpoint, furnaceId }: { setpoint: Setpoint; furnaceId: string }) {
  const { file, names } = useDeviceState()
  const { unit } = usePreference()
  const { closes, opens, unstated } = setpoint.rating
  const stated = [
    { words: 'Closes', standing: closes },
    { words: 'Opens', standing: opens },
    { words: 'Closes or opens, not stated', standing: unstated },
  ].filter(({ standing }) => standing.level !== 'Not on file')
  const ask = `/ask?${setpointQuery({ positionId: setpoint.position.id, furnaceId })}`
  if (stated.length === 0)
    return (
      <p>
        No rating is on file. <a href={ask}>Ask for it</a>, and go on with the looks that need none.
      </p>
    )
  const isWeak = stated.some(({ standing: { level } }) => level === 'Unverified' || level === 'In dispute')
  return (
    <>
      <ul>
        {stated.map(({ words, standing }) => (
          <li key={words}>
            {words}{' '}
            {standing.level === 'In dispute'
              ? [standing, ...standing.rivals]
                  .map(({ pascals }) => formatPressure(pascals!, unit))
                  .join(' or ')
              : formatPressure(standing.pascals!, unit)}
            , <LevelWord level={standing.level} asOf={newestDate(behind(standing), setpoint.reports)} />:{' '}
            {linesFor(behind(standing), file, names)
              .map((line) => line.words)
              .join('; ')}
          </li>
        ))}
      </ul>
      {isWeak && (
        <p>
          <a href={ask}>Ask the Phone desk for a better proof</a>
        </p>
      )}
    </>
  )
}
