'use client'

import { useEffect } from 'react'
import { useAnswerSeen } from '../ask/useAnswerSeen'
import { useDevice, useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { useRecentLookUps } from '../find/useRecentLookUps'
import { UnsuitableHere } from '../foundFitted/UnsuitableHere'
import { LeftOffBanner } from '../furnace/LeftOffBanner'
import { Empty } from '../ui/answers/Empty'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { ForWhat } from './ForWhat'
import { SetpointCard } from './SetpointCard'
import { setpointHref, setpointQuery } from './setpointAddress'
import { useSetpoint } from './useSetpoint'

/** The setpoint of one switch position. Its address holds everything it depends on. */
export function SetpointScreen() {
  const device = useDevice()
  const { file, names } = useDeviceState()
  const { unit } = usePreference()
  const { add } = useRecentLookUps()
  const { address, setpoint } = useSetpoint()
  const positionId = setpoint?.position.id
  useAnswerSeen(positionId)
  const title = setpoint && `${setpoint.position.body.name}, ${setpoint.range.body.name}`

  useEffect(() => {
    if (address !== undefined && title !== undefined) {
      void add({ key: address.positionId, words: title, href: setpointHref(address) })
      document.title = `${title} · Inchwater`
    }
  }, [address, title, add])

  useEffect(() => {
    if (positionId !== undefined) void device.noteLookUp(positionId)
  }, [device, positionId])

  if (address === undefined || setpoint === undefined) {
    return (
      <Empty
        page
        what="This switch position is not on this device"
        why="The address may be cut short, or the position was recorded elsewhere and has not reached this device."
        todo={<a href="/">Find it by part number, model or site</a>}
      />
    )
  }
  const { others } = setpoint
  const { furnaceId } = address
  return (
    <Stack>
      <PageHeader above={<a href="/">Find</a>} title="Setpoint" />
      {furnaceId !== undefined && (
        <>
          <LeftOffBanner {...{ furnaceId, file, names }} />
          <UnsuitableHere {...{ furnaceId, file }} but={setpoint.foundFitted.map(({ id }) => id)} />
        </>
      )}
      <ForWhat key={setpointQuery(address)} address={address} />
      <SetpointCard {...{ setpoint, address, unit, names }} />
      {others.length > 0 && (
        <nav aria-label="Other switches of this range">
          <h2>Other switches of this range</h2>
          <p>Each has a rating of its own; none is carried over.</p>
          <ul>
            {others.map((other) => (
              <li key={other.id}>
                <a href={setpointHref({ ...address, positionId: other.id, partNumber: undefined })}>
                  {other.body.name}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
    </Stack>
  )
}
