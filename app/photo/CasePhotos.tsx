'use client'

import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { photosOfCase } from '@/lib/records/view/photos'
import { useDeviceState } from '../device/deviceContext'
import { findingOptions } from './findingOptions'
import { Photos } from './Photos'

/** The photos of a case. Between visits a photo is the case's own, and of no visit. */
export function CasePhotos({ ofCase, visitId }: { ofCase: CaseFile; visitId: string | undefined }) {
  const { file } = useDeviceState()
  const { entry, furnace } = ofCase
  const of = { caseId: entry.id, furnaceId: furnace.id, visitId }
  return (
    <Photos
      photos={photosOfCase(file, entry.id)}
      of={entry.withdrawn === undefined ? of : undefined}
      shows="other"
      findings={findingOptions(ofCase)}
    />
  )
}
