import type { PressureText } from '@/lib/core/pressure'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { PhotoBody } from '@/lib/records/kinds/photo'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { ReportBody } from '@/lib/records/kinds/report'
import { pictureState, readingsOfPhoto } from '@/lib/records/view/photos'
import { type DraftBody, freshReport, type ReportForm, reportBodies } from '../report/reportForm'

/** Whether somebody may read a photo as its second reader: somebody else has read it, and this person has not. */
export const mayRead = (file: TeamFile, photo: Entry<PhotoBody>, me: string): boolean => {
  const readings = readingsOfPhoto(file, photo)
  return (
    photo.withdrawn === undefined &&
    pictureState(file, photo.body.sha256) !== 'withheld' &&
    readings.length > 0 &&
    readings.every(({ by }) => by !== me)
  )
}

/**
 * The form of a second reading: empty of all that can be read off the picture. What the photo is of, and which furnaces
 * its source holds for, is the first report's and not asked again.
 */
export const freshReading = (first: ReportBody, position: PositionBody): ReportForm => ({
  ...freshReport(position),
  source: first.source,
  covers: 'all',
})

/** What a second reading takes from the first report: everything but what was read. */
const taken = [
  'positionId',
  'furnaceId',
  'kind',
  'between',
  'tap',
  'stage',
  'source',
  'proof',
  'origin',
  'saidOn',
  'readOffPart',
  'partNumber',
  'revisionRange',
  'serialRange',
  'elevationBand',
  'gaugeId',
] as const satisfies readonly (keyof ReportBody)[]

/** The bodies to record, one for each value that was read, of the same origin and proof as the first report. */
export function readingBodies(
  form: ReportForm,
  values: readonly PressureText[],
  first: ReportBody,
  position: PositionBody,
): DraftBody[] {
  const same = Object.fromEntries(taken.map((field) => [field, first[field]]))
  return reportBodies(form, values, { positionId: first.positionId, position }).map((body) => ({
    ...body,
    ...same,
    requestId: undefined,
  }))
}
