'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { switchKindEntries } from '@/lib/catalogue/switchKinds'
import type { Entry } from '@/lib/records/fold/entry'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { isLeftOff } from '@/lib/records/view/case/leftOff'
import { positionsOf } from '@/lib/records/view/case/positionsToProve'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../../device/deviceContext'
import { usePreference } from '../../device/usePreference'
import { furnaceWords } from '../../equipment/candidates'
import { Empty } from '../../ui/answers/Empty'
import { Caution } from '../../ui/danger/Caution'
import { Choice } from '../../ui/form/Choice'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Sheet } from '../../ui/paper/Sheet'
import { Stack } from '../../ui/paper/Stack'
import { LeftOffBanner } from '../LeftOffBanner'
import { BaselineForm } from './BaselineForm'
import { BaselineTable } from './BaselineTable'
import { baselinesOf } from './baselinesOf'
import { Recorded } from './Recorded'

/** Records what a healthy furnace shows, at the annual service or after a proven repair, with no complaint. */
export function BaselineScreen() {
  const { file, names } = useDeviceState()
  const furnace = file.furnaces.get(file.keptId(useSearchParams().get('id') ?? ''))
  if (furnace === undefined) {
    return (
      <Empty
        page
        what="Which furnace is it a baseline of?"
        why="The address names no furnace that is on this device."
        todo={<a href="/">Find the furnace by site, model or serial</a>}
      />
    )
  }
  return (
    <Stack>
      <PageHeader
        above={<a href={`/furnace?id=${furnace.id}`}>{furnaceWords(furnace)}</a>}
        title="Record a baseline"
        lead="What this furnace shows while it is healthy. Later readings are held against it: one that is higher points at the intake."
      />
      <LeftOffBanner furnaceId={furnace.id} {...{ file, names }} />
      {!isLeftOff(file, furnace.id) ? (
        <AtASwitch furnace={furnace} />
      ) : (
        <Empty
          what="No baseline while the furnace is left off"
          why="A baseline is read on a furnace that runs and is healthy."
          todo="Have the notice lifted first, by whoever may judge that."
        />
      )}
    </Stack>
  )
}

function AtASwitch({ furnace }: { furnace: Entry<FurnaceBody> }) {
  const { file, names } = useDeviceState()
  const { unit } = usePreference()
  const asked = useSearchParams().get('position') ?? ''
  const [now] = useState(() => new Date().toISOString())
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  const positions = positionsOf(file, { furnace }).filter(
    ({ body }) => switchKindEntries[body.kind].comparable,
  )
  const [chosen, setChosen] = useState(asked)
  const [saved, setSaved] = useState<string>()
  const only = positions.length === 1 ? positions[0]?.id : undefined
  const position = positions.find(({ id }) => id === (only ?? file.keptId(chosen)))
  const earlier = baselinesOf(file, furnace.id)
  const setpoint = position && setpointOf(file, position.id, furnaceForRating(furnace), settings)

  if (saved !== undefined) {
    return (
      <Recorded
        furnaceId={furnace.id}
        baselineId={saved}
        {...{ file, unit, names }}
        onNext={() => setSaved(undefined)}
      />
    )
  }
  if (positions.length === 0) {
    return (
      <Empty
        what="No switch of this furnace is on record that a reading can be taken at"
        why="A baseline belongs to one switch position, and the positions come from the furnace range."
        todo={
          furnace.body.rangeId === undefined ? (
            <a href={`/furnace/add?again=${furnace.id}`}>Record the furnace anew with its range</a>
          ) : (
            <a href={`/equipment/add-position?range=${file.keptId(furnace.body.rangeId)}`}>
              Add the first switch position of its range
            </a>
          )
        }
      />
    )
  }
  return (
    <>
      <Caution />
      {only === undefined && (
        <Sheet>
          <Choice
            legend="At which switch?"
            name="position"
            options={positions.map(({ id, body }) => ({ value: id, words: body.name }))}
            value={position?.id ?? null}
            onChoose={setChosen}
          />
        </Sheet>
      )}
      {setpoint !== undefined && (
        <BaselineForm
          key={setpoint.position.id}
          furnaceId={furnace.id}
          {...{ setpoint, now }}
          onSaved={setSaved}
        />
      )}
      {earlier.length > 0 && (
        <Sheet title="Earlier baselines">
          <BaselineTable caption="Of this furnace" lines={earlier} {...{ file, unit, names }} empty={null} />
        </Sheet>
      )}
    </>
  )
}
