'use client'

import { useSearchParams } from 'next/navigation'
import { pictureState, readingsOfPhoto } from '@/lib/records/view/photos'
import { thePicture } from '@/lib/records/withholdable'
import { useDeviceState } from '../device/deviceContext'
import { bodyFacts } from '../record/bodyFacts'
import { useAbout } from '../record/useAbout'
import { maybeWithheld } from '../record/withheldFields'
import { ButtonLink } from '../ui/form/Button'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { Picture } from '../ui/photo/Picture'
import { showsWords } from '../ui/photo/photoWords'
import { sayMoment } from '../ui/words/sayDate'
import { NoPhoto } from './NoPhoto'
import { PictureStanding } from './PictureStanding'
import { mayRead } from './secondReading'
import { WhatWasRead } from './WhatWasRead'

/** One photo, large, with what it belongs to, what was read off it, and whether it counts as a proof. */
export function PhotoScreen() {
  const id = useSearchParams().get('id') ?? ''
  const { file, me, names } = useDeviceState()
  const about = useAbout()
  const photo = file.photos.get(id)
  if (photo === undefined) return <NoPhoto />
  const { body, by, at, waiting, withdrawn } = photo
  const readings = readingsOfPhoto(file, photo)
  const asked = mayRead(file, photo, me.id)
  const { sha256, mediaType, width, height, bytes, caption, ...rest } = body
  return (
    <Stack>
      <PageHeader
        title={caption ?? showsWords[body.shows]}
        lead={`${names.get(by) ?? 'Somebody whose name is not on this device'}, ${sayMoment(at)}${waiting ? ', on this device only until it is sent' : ''}`}
      />
      {withdrawn !== undefined && (
        <p>
          This photo was withdrawn: {withdrawn.reason}. <a href={`/record?id=${id}`}>See who did and when</a>
        </p>
      )}
      <Sheet
        title="The picture"
        foot={
          <Row>
            {asked && (
              <ButtonLink kind="main" href={`/photo/read?id=${id}`}>
                Read this photo yourself
              </ButtonLink>
            )}
            {maybeWithheld('photo', photo, me.role).includes(thePicture) && (
              <ButtonLink kind="quiet" href={`/withhold?record=${id}`}>
                Withhold the picture
              </ButtonLink>
            )}
            <ButtonLink kind="quiet" href={`/record?id=${id}`}>
              The record itself
            </ButtonLink>
          </Row>
        }
      >
        <Stack>
          <Picture
            {...body}
            alt={`${showsWords[body.shows]}${caption === undefined ? '' : `: ${caption}`}`}
            size="large"
          />
          <PictureStanding sha256={sha256} />
        </Stack>
      </Sheet>
      {readings.length > 0 && (
        <Sheet title="What was read off it">
          {asked ? (
            <p>
              Somebody has read it. What they read is not shown here until you have read it yourself: then the
              two readings count for more.
            </p>
          ) : (
            <WhatWasRead readings={readings} isHeld={pictureState(file, sha256) === 'held'} />
          )}
        </Sheet>
      )}
      <Sheet title="What is on record about it">
        <Facts
          facts={[
            ...bodyFacts('photo', rest, about),
            {
              key: 'size',
              name: 'As it was sent',
              value: `${width} by ${height} pixels, ${Math.max(1, Math.round(bytes / 1000))} kB, ${mediaType.slice(6).toUpperCase()}`,
            },
          ]}
        />
      </Sheet>
    </Stack>
  )
}
