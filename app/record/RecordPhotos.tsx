'use client'

import { canBePhotographed } from '@/lib/records/kinds/photo'
import { photosOfReport } from '@/lib/records/view/photos'
import { useDeviceState } from '../device/deviceContext'
import { AddPhoto } from '../photo/AddPhoto'
import { ReportPhotos } from '../photo/ReportPhotos'
import { shownBy } from '../report/photoRecord'
import { Fold } from '../ui/paper/Fold'
import { PhotoStrip } from '../ui/photo/PhotoStrip'

/** The photo that a record is, or the photos that bear out a report, with a place for one that was taken later. */
export function RecordPhotos({ id }: { id: string }) {
  const { file } = useDeviceState()
  const photo = file.photos.get(id)
  if (photo !== undefined) return <PhotoStrip photos={[photo]} label="The photo" />
  const report = file.reports.get(id)
  if (report === undefined || report.withdrawn !== undefined) return null
  const { positionId, furnaceId, source } = report.body
  return (
    <>
      <ReportPhotos reports={[report]} />
      {canBePhotographed(source) && (
        <Fold key={photosOfReport(file, id).length} summary="Add a photo of what was read">
          {() => <AddPhoto of={{ reportId: id, positionId, furnaceId }} shows={shownBy(source)} />}
        </Fold>
      )}
    </>
  )
}
