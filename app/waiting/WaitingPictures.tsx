'use client'

import { isOnItsWay, isRefused } from '@/lib/device/picture/pictures'
import { useDevice, useDeviceState } from '../device/deviceContext'
import { Button } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Row } from '../ui/paper/Stack'
import { PhotoStrip } from '../ui/photo/PhotoStrip'

/** The pictures that have not left this device: those that are on their way, and those that the server refused. */
export function WaitingPictures() {
  const device = useDevice()
  const { file, pictures } = useDeviceState()
  const photosOf = (hashes: readonly string[]) =>
    [...file.photos.values()].filter(({ body }) => hashes.includes(body.sha256))
  const onTheirWay = pictures.filter(isOnItsWay).map(({ sha256 }) => sha256)
  return (
    <>
      {pictures.filter(isRefused).map(({ sha256, refusal }) => (
        <Sheet
          key={sha256}
          title="Refused: a picture"
          sub="Its record is in the log and stays; without the picture it is no proof."
          foot={
            <Row>
              <Button onClick={() => void device.sendPictureAgain(sha256)}>Send it again</Button>
              <Button kind="quiet" onClick={() => void device.dropPicture(sha256)}>
                Take it off this device
              </Button>
            </Row>
          }
        >
          <p>{refusal}</p>
          <PhotoStrip photos={photosOf([sha256])} label="Refused picture" />
        </Sheet>
      ))}
      {onTheirWay.length > 0 && (
        <Sheet title="Waiting: pictures" sub="Each follows its record.">
          <PhotoStrip photos={photosOf(onTheirWay)} label="Pictures waiting to be sent" />
        </Sheet>
      )}
    </>
  )
}
