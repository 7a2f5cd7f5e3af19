import type { PressureUnit } from '@/lib/core/pressure'
import type { Comparison } from '@/lib/core/reading'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { behind, linesFor, newestDate, statedDecimals } from '../setpoint/sourceLines'
import { SetpointNumber } from '../ui/words/SetpointNumber'

type Props = {
  contacts: Comparison['contacts']
  kind: Comparison['kind']
  setpoint: Setpoint
  unit: PressureUnit
  names: ReadonlyMap<string, string>
}

/**
 * The point where it closes again, beside the point where it opens: an open contact stays open until the pressure
 * gets there, however well it would be held. Every value of a dispute is named, each with its standing.
 */
export function ClosesAgainAt({ contacts, kind, setpoint, unit, names }: Props) {
  const { file } = useDeviceState()
  const { rating, reports } = setpoint
  const { closes } = rating
  if (closes.level === 'Not on file') return null
  const values = [
    { ...closes, reportIds: behind(closes) },
    ...closes.rivals.filter((rival) => rival.disputes),
  ]
  const reach = kind === 'opens on rise' ? 'it must fall to' : 'it needs'
  return (
    <div>
      <p>
        {contacts === 'open' ? `To close again ${reach}:` : `Once it has opened, to close again ${reach}:`}
      </p>
      {values.map((value) => (
        <SetpointNumber
          key={value.reportIds.join()}
          {...value}
          action="closes"
          unit={unit}
          decimals={statedDecimals(value.reportIds, reports, unit)}
          size="line"
          standing={{
            level: closes.level,
            asOf: newestDate(value.reportIds, reports),
            sources: linesFor(value.reportIds, file, names),
          }}
        />
      ))}
    </div>
  )
}
