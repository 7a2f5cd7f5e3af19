import type { PressureUnit } from '@/lib/core/pressure'
import { dependsOnFurnace } from '@/lib/core/rating'
import type { Action } from '@/lib/core/vocabulary'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { Beside } from '../ui/paper/Beside'
import { WaterColumn } from '../ui/waterColumn/WaterColumn'
import { marksOf } from './marksOf'
import { StandingSection } from './StandingSection'
import type { SetpointAddress } from './setpointAddress'
import { WhichFurnace } from './WhichFurnace'

type Props = {
  setpoint: Setpoint
  address: SetpointAddress
  unit: PressureUnit
  names: ReadonlyMap<string, string>
}

const sections: readonly { key: 'closes' | 'opens' | 'unstated'; action: Action }[] = [
  { key: 'closes', action: 'closes' },
  { key: 'opens', action: 'opens' },
  { key: 'unstated', action: 'not stated' },
]

/** The numbers of a position with their picture; where one depends on the furnace, the question in its place. */
export function Numbers({ setpoint, address, unit, names }: Props) {
  const { rating, position } = setpoint
  const open = sections.filter(({ key }) => dependsOnFurnace(rating, key)).map(({ key }) => key)
  const known = sections.filter(({ key }) => !open.includes(key))
  const first = known.find(({ key }) => rating[key].level !== 'Not on file')?.key
  const shown = known.filter(
    ({ key }) =>
      key !== 'unstated' || rating.unstated.level !== 'Not on file' || rating.unstated.leads.length > 0,
  )
  return (
    <>
      {rating.asks.length > 0 && <WhichFurnace {...{ setpoint, address, unit, names, open }} />}
      {first === undefined ? (
        shown.map(({ key, action }) => (
          <StandingSection
            key={key}
            action={action}
            standing={rating[key]}
            size="small"
            {...{ setpoint, unit, names }}
          />
        ))
      ) : (
        <Beside
          picture={
            <WaterColumn
              unit={unit}
              sense={position.body.sense}
              marks={known.flatMap(({ key, action }) => marksOf(rating[key], action, setpoint.reports))}
            />
          }
        >
          {shown.map(({ key, action }) => (
            <StandingSection
              key={key}
              action={action}
              standing={rating[key]}
              size={key === first ? 'large' : 'small'}
              {...{ setpoint, unit, names }}
            />
          ))}
        </Beside>
      )}
    </>
  )
}
