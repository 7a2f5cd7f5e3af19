import type { Proof, RatingReport } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { PhotoBody } from '../kinds/photo'
import type { ReportBody } from '../kinds/report'
import { groupedOnce } from './grouped'
import { oldestFirst } from './ofFurnace'
import { photosOfReport, pictureState, readingsOfPhoto } from './photos'
import { saidAtOf } from './standingReports'

/** The reports of a position that count, oldest first, joined positions followed. */
export const reportsAt = (file: TeamFile, positionId: string): readonly Entry<ReportBody>[] =>
  byPosition(file, file.reports).get(file.keptId(positionId)) ?? []

const byPosition = groupedOnce<ReportBody>(({ positionId }) => [positionId], oldestFirst)

/**
 * A report as the weighing takes it. A photo is a proof only while its picture is held and not withheld; a second
 * person is one only when it is not the first, and, where a photo was read, only when both read the same off it.
 */
export function ratingReportOf(report: Entry<ReportBody>, file: TeamFile): RatingReport {
  const { body } = report
  const partClass = body.readOffPart === undefined ? undefined : classNow(file, body.readOffPart)
  const proof = proofOf(report, file)
  return {
    id: report.id,
    positionKey: file.keptId(body.positionId),
    action: body.action,
    limit: body.limit,
    pascals: body.pascals,
    sense: body.sense,
    decimals: body.decimals,
    unit: body.unit,
    asWritten: body.asWritten,
    kind: body.kind,
    between: body.between,
    tap: body.tap,
    stage: body.stage,
    source: body.source,
    saidAt: saidAtOf(report),
    saidBy: body.saidBy ?? report.by,
    secondPerson:
      (body.secondPersonId !== undefined && body.secondPersonId !== report.by) ||
      secondReadingOf(report, file) !== undefined,
    ...optional('proof', proof),
    ...optional('photo', photoHashOf(report, file)),
    ...optional('partClass', partClass),
    ...optional('toleranceAbove', body.toleranceAbove),
    ...optional('toleranceBelow', body.toleranceBelow),
    ...optional('readBack', body.readBack),
    ...optional('origin', body.origin),
    ...optional('partNumber', body.partNumber ?? partNumberOf(file, body.readOffPart)),
    ...optional('revisionRange', body.revisionRange),
    ...optional('serialRange', body.serialRange),
    ...optional('elevationBand', body.elevationBand),
    ...optional('furnaceId', body.furnaceId),
  }
}

/** What lets somebody else check a report now: of photos, those whose picture the server holds and nobody withheld. */
export function proofOf(report: Entry<ReportBody>, file: TeamFile): Proof | undefined {
  const stated = report.body.proof?.kind
  if (stated !== undefined && stated !== 'photo') return stated
  const held = photosOfReport(file, report.id).some(({ body }) => pictureState(file, body.sha256) === 'held')
  return held ? 'photo' : undefined
}

/** The report of somebody else who read the same number off the same photo; undefined while nobody did. */
export function secondReadingOf(report: Entry<ReportBody>, file: TeamFile): Entry<ReportBody> | undefined {
  const photo = readOffPhoto(report, file)
  if (photo === undefined || pictureState(file, photo.body.sha256) !== 'held') return undefined
  return readingsOfPhoto(file, photo).find(
    ({ by, body }) => by !== report.by && saysTheSame(body, report.body, file),
  )
}

const saysTheSame = (one: ReportBody, other: ReportBody, file: TeamFile): boolean =>
  file.keptId(one.positionId) === file.keptId(other.positionId) &&
  one.action === other.action &&
  one.limit === other.limit &&
  one.pascals === other.pascals

const readOffPhoto = (
  { body: { proof } }: Entry<ReportBody>,
  file: TeamFile,
): Entry<PhotoBody> | undefined => (proof?.kind === 'photo' ? file.photos.get(proof.photoId) : undefined)

/** Two reports that were read off one picture are of one origin, whatever else they state. */
const photoHashOf = (report: Entry<ReportBody>, file: TeamFile): string | undefined =>
  readOffPhoto(report, file)?.body.sha256

/** What a part is taken for now: withdrawn, it vouches for nothing, unless the record in its place does. */
function classNow(file: TeamFile, partId: string): RatingReport['partClass'] {
  const part = file.parts.get(file.keptId(partId))
  const replacement = part?.withdrawn?.replacedBy
  if (replacement !== undefined && replacement !== partId) return classNow(file, replacement)
  if (part === undefined || part.withdrawn !== undefined) return 'not known'
  return part.body.fieldAdjustable ? 'general-purpose' : part.body.class
}

const partNumberOf = (file: TeamFile, partId: string | undefined): string | undefined =>
  partId === undefined ? undefined : file.parts.get(file.keptId(partId))?.body.partNumber

const optional = <Key extends string, Value>(key: Key, value: Value | undefined) =>
  (value === undefined ? {} : { [key]: value }) as { [K in Key]?: Value }
