'use client'

import { useMemo } from 'react'
import { isOnItsWay, isRefused } from '@/lib/device/picture/pictures'
import { useDevice, useDeviceState } from '../device/deviceContext'
import { toMend } from '../device/openDrafts'
import { bodyFacts } from '../record/bodyFacts'
import { recordTitle } from '../record/recordTitle'
import { useAbout } from '../record/useAbout'
import { Empty } from '../ui/answers/Empty'
import { Button } from '../ui/form/Button'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { sayMoment } from '../ui/words/sayDate'
import { BeforeIt } from './BeforeIt'
import { DealWith } from './DealWith'
import { mustGoFirst, waitingFor } from './mustGoFirst'
import { WaitingPictures } from './WaitingPictures'

/** How many waiting records are drawn: an old list that is being taken over has thousands of them. */
const shownAtOnce = 100

/** What has not left this device: refused records with the reason, and those that wait to be sent. */
export function WaitingScreen() {
  const device = useDevice()
  const state = useDeviceState()
  const { waiting, refused, pictures } = state
  const isEmpty =
    waiting.length + refused.length === 0 && !pictures.some((one) => isOnItsWay(one) || isRefused(one))
  const beside = useMemo(() => [...refused, ...waiting].map((item) => item.record), [refused, waiting])
  const about = useAbout(beside)
  async function mend(id: string) {
    const address = await device.mend(id)
    if (address !== undefined) location.assign(toMend(address, id))
  }
  return (
    <Stack>
      <PageHeader title="Still on this device" lead="Nothing here is lost. What waits is sent by itself." />
      {isEmpty && (
        <Empty
          what="Everything is sent"
          why="Every record made on this device is in the team’s log."
          todo={<a href="/">Go to Find</a>}
        />
      )}
      <WaitingPictures />
      {refused.map(({ record, refusal, saidAt }) => (
        <div key={record.id} id={record.id}>
          <Sheet
            title={`Refused: ${recordTitle(record.kind, record.body)}`}
            sub={sayMoment(record.saidAt)}
            foot={
              <DealWith
                canMend={saidAt !== undefined}
                mend={() => void mend(record.id)}
                sendAgain={() => void device.sendAgain(record.id)}
                drop={() => void device.dropRefused(record.id)}
              />
            }
          >
            <p>{refusal?.sentence}</p>
            <WaitFor count={waitingFor(record.id, waiting)} />
            <Facts facts={bodyFacts(record.kind, record.body, about)} />
          </Sheet>
        </div>
      ))}
      {waiting.slice(0, shownAtOnce).map(({ record }) => {
        const first = mustGoFirst(record, state)
        return (
          <div key={record.id} id={record.id}>
            <Sheet
              title={`Waiting: ${recordTitle(record.kind, record.body)}`}
              sub={sayMoment(record.saidAt)}
              foot={
                first.gone > 0 && (
                  <Button kind="quiet" onClick={() => void device.dropRefused(record.id)}>
                    Take it off this device
                  </Button>
                )
              }
            >
              <BeforeIt {...first} />
              <Facts facts={bodyFacts(record.kind, record.body, about)} />
            </Sheet>
          </div>
        )
      })}
      {waiting.length > shownAtOnce && (
        <p>And {waiting.length - shownAtOnce} more. They are sent in their order.</p>
      )}
      {(waiting.length > 0 || pictures.some(isOnItsWay)) && (
        <Button kind="main" onClick={() => void device.sync()}>
          Try to send now
        </Button>
      )}
    </Stack>
  )
}

function WaitFor({ count }: { count: number }) {
  if (count === 0) return null
  return (
    <p>
      <b>{count === 1 ? '1 record below waits for it' : `${count} records below wait for it`}</b> and cannot
      go without it. Put right why it was refused, then send it again.
    </p>
  )
}
