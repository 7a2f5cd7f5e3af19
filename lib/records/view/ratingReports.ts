import type { Proof, RatingReport } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { ReportBody } from '../kinds/report'

/** The reports of a position that count, oldest first, joined positions followed. */
export function reportsAt(file: TeamFile, positionId: string): Entry<ReportBody>[] {
  const kept = file.keptId(positionId)
  return counting(file.reports)
    .filter((report) => file.keptId(report.body.positionId) === kept)
    .toSorted((a, b) => (a.at < b.at ? -1 : 1))
}

/**
 * A report as the weighing takes it. A photo is a proof only once its picture is held; a second person is one only
 * when it is not the first.
 */
export function ratingReportOf(report: Entry<ReportBody>, file: TeamFile): RatingReport {
  const { body } = report
  const partClass = body.readOffPart === undefined ? undefined : classNow(file, body.readOffPart)
  const held: Proof | undefined = body.proof?.kind === 'photo' ? undefined : body.proof?.kind
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
    saidAt: body.saidOn ?? report.at,
    saidBy: body.saidBy ?? report.by,
    secondPerson: body.secondPersonId !== undefined && body.secondPersonId !== report.by,
    ...(held === undefined ? {} : { proof: held }),
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
