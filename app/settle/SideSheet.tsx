import type { PressureUnit } from '@/lib/core/pressure'
import type { Action } from '@/lib/core/vocabulary'
import type { ReportBody } from '@/lib/records/kinds/report'
import { coverWords } from '@/lib/records/view/coverWords'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { bundleLine } from '../setpoint/bundleWords'
import { linesFor, newestDate, statedDecimals } from '../setpoint/sourceLines'
import { Sheet } from '../ui/paper/Sheet'
import { AsPrinted } from '../ui/words/AsPrinted'
import { Quiet } from '../ui/words/Quiet'
import { SetpointNumber } from '../ui/words/SetpointNumber'
import type { Side } from './dispute'

type Props = {
  title: string
  side: Side
  action: Action
  setpoint: Setpoint
  unit: PressureUnit
  names: ReadonlyMap<string, string>
}

/** One side of a dispute: its number with its sources and their dates, and what each of them says letter for letter. */
export function SideSheet({ title, side, action, setpoint, unit, names }: Props) {
  const { file } = useDeviceState()
  const { reports } = setpoint
  return (
    <Sheet title={title}>
      <SetpointNumber
        {...side}
        action={action}
        unit={unit}
        decimals={statedDecimals(side.reportIds, reports, unit)}
        size="small"
        standing={{
          level: 'In dispute',
          asOf: newestDate(side.reportIds, reports),
          sources: linesFor(side.reportIds, file, names),
        }}
      />
      {side.slip !== undefined && <p>Likely slip: {side.slip}.</p>}
      <ul>
        {side.reportIds.flatMap((id) => {
          const body = reports.get(id)?.body
          return body === undefined
            ? []
            : [
                <li key={id}>
                  <AsPrinted text={body.asWritten} />{' '}
                  <Quiet inline>
                    {bundleLine({ ...setpoint.position.body, ...bundleOf(body) })} · {coverWords(body)}
                  </Quiet>
                </li>,
              ]
        })}
      </ul>
    </Sheet>
  )
}

/** What belongs to the number as this report states it, in the place of what the position's record says. */
const bundleOf = ({ stage, sense, between, tap }: ReportBody) => ({ stage, sense, between, tap })
