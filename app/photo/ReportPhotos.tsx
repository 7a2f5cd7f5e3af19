'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { ReportBody } from '@/lib/records/kinds/report'
import { photosOfReport } from '@/lib/records/view/photos'
import { useDeviceState } from '../device/deviceContext'
import { PhotoStrip } from '../ui/photo/PhotoStrip'
import { mayRead } from './secondReading'

/** The photos that bear out reports, each once, and those that want a second reader. Nothing where there is none. */
export function ReportPhotos({ reports }: { reports: readonly Entry<ReportBody>[] }) {
  const { file, me } = useDeviceState()
  const photos = [
    ...new Map(
      reports.flatMap(({ id }) => photosOfReport(file, id)).map((photo) => [photo.body.sha256, photo]),
    ).values(),
  ]
  if (photos.length === 0) return null
  return (
    <section>
      <h3>Photos of what was read</h3>
      <PhotoStrip photos={photos} label="Photos of what was read" />
      {photos
        .filter((photo) => mayRead(file, photo, me.id))
        .map((photo) => (
          <p key={photo.id}>
            One person has read it. <a href={`/photo/read?id=${photo.id}`}>Read this photo yourself</a>
          </p>
        ))}
    </section>
  )
}
