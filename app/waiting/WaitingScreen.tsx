'use client'

import { useDevice, useDeviceState } from '../device/deviceContext'
import { bodyFacts } from '../record/bodyFacts'
import { recordTitle } from '../record/recordTitle'
import { Empty } from '../ui/answers/Empty'
import { Button } from '../ui/form/Button'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { sayMoment } from '../ui/words/sayDate'

/** What has not left this device: refused records with the reason, and those that wait to be sent. */
export function WaitingScreen() {
  const device = useDevice()
  const { waiting, refused, file } = useDeviceState()
  return (
    <Stack>
      <PageHeader title="Still on this device" lead="Nothing here is lost. What waits is sent by itself." />
      {waiting.length + refused.length === 0 && (
        <Empty
          what="Everything is sent"
          why="Every record made on this device is in the team’s log."
          todo={<a href="/">Go to Find</a>}
        />
      )}
      {refused.map(({ record, refusal }) => (
        <Sheet
          key={record.id}
          title={`Refused: ${recordTitle(record.kind, record.body)}`}
          sub={sayMoment(record.saidAt)}
          foot={
            <Row>
              <Button onClick={() => void device.sendAgain(record.id)}>Send it again</Button>
              <Button kind="quiet" onClick={() => void device.dropRefused(record.id)}>
                Take it off this device
              </Button>
            </Row>
          }
        >
          <p>{refusal?.sentence}</p>
          <Facts facts={bodyFacts(record.body, file)} />
        </Sheet>
      ))}
      {waiting.map(({ record }) => (
        <Sheet
          key={record.id}
          title={`Waiting: ${recordTitle(record.kind, record.body)}`}
          sub={sayMoment(record.saidAt)}
        >
          <Facts facts={bodyFacts(record.body, file)} />
        </Sheet>
      ))}
      {waiting.length > 0 && (
        <Button kind="main" onClick={() => void device.sync()}>
          Try to send now
        </Button>
      )}
    </Stack>
  )
}
