import { formatPressure } from '@/lib/core/pressure'
import { dependsOnFurnace } from '@/lib/core/rating'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../../device/deviceContext'
import { usePreference } from '../../device/usePreference'
import { setpointQuery } from '../../setpoint/setpointAddress'
import { behind, linesFor, newestDate } from '../../setpoint/sourceLines'
import { LevelWord } from '../../ui/words/LevelWord'

/**
 * Make and break of a position in a line each, with level and date: a number never stands alone. One that depends on
 * something that is not on record of the furnace is not shown.
 */
export function StandingLine({ setpoint, furnaceId }: { setpoint: Setpoint; furnaceId: string }) {
  const { file, names } = useDeviceState()
  const { unit } = usePreference()
  const { closes, opens, unstated } = setpoint.rating
  const every = [
    { words: 'Closes', key: 'closes', standing: closes },
    { words: 'Opens', key: 'opens', standing: opens },
    { words: 'Closes or opens, not stated', key: 'unstated', standing: unstated },
  ] as const
  const stated = every.filter(({ standing }) => standing.level !== 'Not on file')
  const ask = `/ask?${setpointQuery({ positionId: setpoint.position.id, furnaceId })}`
  if (stated.length === 0)
    return (
      <p>
        No rating is on file. <a href={ask}>Ask for it</a>, and go on with the looks that need none.
      </p>
    )
  // A number that may be another furnace's is not shown as this one's.
  const shown = stated.filter(({ key }) => !dependsOnFurnace(setpoint.rating, key))
  const isWeak = stated.some(({ standing: { level } }) => level === 'Unverified' || level === 'In dispute')
  return (
    <>
      {shown.length < stated.length && (
        <p>
          What is on file depends on the {setpoint.rating.asks.join(' and ')}, which this furnace’s record
          does not give. <a href={`/furnace/add?again=${furnaceId}`}>Record the furnace anew with it</a>
        </p>
      )}
      <ul>
        {shown.map(({ words, standing }) => (
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
