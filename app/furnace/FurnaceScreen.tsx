'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { counting } from '@/lib/records/fold/teamFile'
import { photosOfFurnace } from '@/lib/records/view/photos'
import { ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { furnaceWords } from '../equipment/candidates'
import { FittedWarning } from '../foundFitted/FittedWarning'
import { Photos } from '../photo/Photos'
import { SetpointCard } from '../setpoint/SetpointCard'
import { furnaceOf } from '../setpoint/setpointAddress'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { Baselines } from './Baselines'
import { FurnaceFacts } from './FurnaceFacts'
import { FurnaceTags } from './FurnaceTags'
import { LeftOffBanner } from './LeftOffBanner'
import { NoRange } from './NoRange'
import { OpenRequests } from './OpenRequests'
import { PastCases } from './PastCases'
import { RepairList } from './RepairList'

/** One furnace: whether it is left off, what it is, the setpoint of each switch, and everything that happened to it. */
export function FurnaceScreen() {
  const id = useSearchParams().get('id') ?? ''
  const { file, names, me } = useDeviceState()
  const { unit } = usePreference()
  const [now] = useState(() => new Date().toISOString())
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  const furnace = file.furnaces.get(file.keptId(id))
  if (furnace === undefined) {
    return (
      <Stack>
        <PageHeader above={<a href="/">Find</a>} title="Furnace" />
        <Empty
          what="This furnace is not on this device"
          why="The address may be cut short, or the furnace was recorded elsewhere and has not reached this device."
          todo={
            <p>
              <a href="/">Find it by site, model or serial</a>, or <a href="/furnace/add">add it</a>
            </p>
          }
        />
      </Stack>
    )
  }
  const here = (furnaceId: string | undefined) =>
    furnaceId !== undefined && file.keptId(furnaceId) === furnace.id
  const range =
    furnace.body.rangeId === undefined ? undefined : file.ranges.get(file.keptId(furnace.body.rangeId))
  const positions = counting(file.positions).filter(
    ({ body }) => range !== undefined && file.keptId(body.rangeId) === range.id,
  )
  const found = counting(file.foundFitted).filter(({ body }) => here(body.furnaceId))
  const newer = counting(file.furnaces).find(({ body }) => here(body.replaces))

  return (
    <Stack>
      <PageHeader
        above={<a href="/">Find</a>}
        title={furnace.body.siteLabel}
        lead={
          <>
            Furnace <span translate="no">{furnace.body.model}</span>
          </>
        }
      />
      <LeftOffBanner furnaceId={furnace.id} {...{ file, names }} />
      {furnace.withdrawn !== undefined && (
        <p>
          This record was withdrawn: {furnace.withdrawn.reason}.{' '}
          <a href={`/record?id=${furnace.id}`}>See who did and when</a>
        </p>
      )}
      {newer !== undefined && (
        <p>
          It was replaced by <a href={`/furnace?id=${newer.id}`}>{furnaceWords(newer)}</a>, which has a
          history of its own.
        </p>
      )}
      {found.map((each) => (
        <FittedWarning key={each.id} found={each} file={file} />
      ))}
      <Sheet
        title="The furnace"
        foot={
          <Row>
            <ButtonLink kind="main" href={`/cases/new?furnace=${furnace.id}`}>
              New case
            </ButtonLink>
            <ButtonLink href={`/furnace/baseline?id=${furnace.id}`}>Record a baseline</ButtonLink>
            <ButtonLink href={`/furnace/repair?furnace=${furnace.id}`}>Record a repair</ButtonLink>
            <ButtonLink href={`/found-fitted?furnace=${furnace.id}`}>An unsuitable switch is in</ButtonLink>
            <ButtonLink kind="quiet" href={`/furnace/add?again=${furnace.id}`}>
              Record it anew with what is missing
            </ButtonLink>
            <ButtonLink kind="quiet" href={`/record?id=${furnace.id}`}>
              The record itself
            </ButtonLink>
          </Row>
        }
      >
        <FurnaceFacts furnace={furnace} file={file} />
      </Sheet>
      {range === undefined && <NoRange furnace={furnace} file={file} />}
      {range !== undefined && positions.length === 0 && (
        <Empty
          what={`No switch of ${range.body.name} is on file`}
          why="A rating belongs to one switch position of a range."
          todo={<a href={`/equipment/add-position?range=${range.id}`}>Add its first switch position</a>}
        />
      )}
      {positions.map((position) => {
        const address = { positionId: position.id, furnaceId: furnace.id }
        const setpoint = setpointOf(file, position.id, furnaceOf(file, address), settings)
        if (setpoint === undefined) return null
        // What was found in other furnaces of the range is no warning about this one.
        const own = setpoint.foundFitted.filter(({ body }) => here(body.furnaceId))
        return (
          <div key={position.id}>
            {setpoint.rating.asks.length > 0 && (
              <p>
                What is on file for {position.body.name} depends on the {setpoint.rating.asks.join(' and ')},
                which this furnace’s record does not give.{' '}
                <a href={`/furnace/add?again=${furnace.id}`}>Record the furnace anew with it</a>
              </p>
            )}
            <SetpointCard setpoint={{ ...setpoint, foundFitted: own }} {...{ address, unit, names }} />
          </div>
        )
      })}
      <OpenRequests furnaceId={furnace.id} {...{ file, names }} />
      <PastCases furnaceId={furnace.id} {...{ file, now }} />
      <Photos photos={photosOfFurnace(file, furnace.id)} of={{ furnaceId: furnace.id }} shows="data plate" />
      <Baselines furnaceId={furnace.id} {...{ file, unit, names }} />
      <RepairList furnaceId={furnace.id} file={file} names={names} />
      <FurnaceTags furnaceId={furnace.id} role={me.role} {...{ file, names }} />
    </Stack>
  )
}
