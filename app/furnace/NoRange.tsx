import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { rangeWords } from '../equipment/candidates'
import { rangesThatFit } from '../equipment/modelPatterns'
import { setpointHref } from '../setpoint/setpointAddress'
import { Empty } from '../ui/answers/Empty'
import { Sheet } from '../ui/paper/Sheet'

/**
 * In place of the setpoints of a furnace whose record names no range: the ranges whose model patterns stand for its
 * model, as a lead to follow and not as an answer.
 */
export function NoRange({ furnace, file }: { furnace: Entry<FurnaceBody>; file: TeamFile }) {
  const { model } = furnace.body
  const fitting = rangesThatFit(file, model)
  const again = `/furnace/add?again=${furnace.id}`
  if (fitting.length === 0) {
    return (
      <Empty
        what="No furnace range is on record for it"
        why={`No range on file has a model number or pattern that stands for ${model}, so no setpoint can be shown.`}
        todo={
          <a href={`/equipment/add-range?${new URLSearchParams({ model })}`}>
            Add the furnace range and its switches
          </a>
        }
      />
    )
  }
  return (
    <Sheet
      title="Which furnace range is it of?"
      sub="Its record names none. These stand for its model number by their patterns; check the data plate."
      foot={<a href={again}>Record the furnace anew with its range</a>}
    >
      <ul>
        {fitting.map((range) => (
          <li key={range.id}>
            {rangeWords(file, range)} <span translate="no">({range.body.modelPatterns.join(' · ')})</span>
            <ul>
              {counting(file.positions)
                .filter(({ body }) => file.keptId(body.rangeId) === range.id)
                .map(({ id, body }) => (
                  <li key={id}>
                    <a href={setpointHref({ positionId: id, furnaceId: furnace.id })}>{body.name}</a>
                  </li>
                ))}
            </ul>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
