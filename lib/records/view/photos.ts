import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { PhotoBody } from '../kinds/photo'
import type { ReportBody } from '../kinds/report'
import { thePicture } from '../withholdable'
import { oldestFirst } from './ofFurnace'

/** What is known of a photo's picture: the server holds it, has not got it yet, or a manager has withheld it. */
export type PictureState = 'held' | 'not here yet' | 'withheld'

/** What is looked up again and again, gathered once for a whole team file. */
type PhotoIndex = {
  /** Hashes of the withheld pictures, with the withholding that took each. */
  withheld: ReadonlyMap<string, string>
  ofCase: ReadonlyMap<string, Entry<PhotoBody>[]>
  ofReport: ReadonlyMap<string, Entry<PhotoBody>[]>
  /** The reports that were read off a photo, by the hash of its picture. */
  readings: ReadonlyMap<string, Entry<ReportBody>[]>
}

const indexes = new WeakMap<TeamFile, PhotoIndex>()

function indexOf(file: TeamFile): PhotoIndex {
  const known = indexes.get(file)
  if (known !== undefined) return known
  const withheld = new Map<string, string>()
  for (const photo of file.photos.values()) {
    if (isPictureWithheld(photo)) withheld.set(photo.body.sha256, photo.withheld!.by)
  }
  const ofCase = new Map<string, Entry<PhotoBody>[]>()
  const ofReport = new Map<string, Entry<PhotoBody>[]>()
  for (const photo of counting(file.photos).sort(oldestFirst)) {
    const { caseId, reportId } = photo.body
    if (caseId !== undefined) push(ofCase, file.keptId(caseId), photo)
    if (reportId !== undefined) push(ofReport, reportId, photo)
  }
  const readings = new Map<string, Entry<ReportBody>[]>()
  for (const report of counting(file.reports).sort(oldestFirst)) {
    if (report.body.proof?.kind !== 'photo') continue
    const photo = file.photos.get(report.body.proof.photoId)
    if (photo === undefined || photo.withdrawn !== undefined) continue
    push(ofReport, report.id, photo)
    push(readings, photo.body.sha256, report)
  }
  const index = { withheld, ofCase, ofReport, readings }
  indexes.set(file, index)
  return index
}

function push<Value>(lists: Map<string, Value[]>, key: string, value: Value): void {
  const list = lists.get(key)
  if (list === undefined) lists.set(key, [value])
  else list.push(value)
}

const isPictureWithheld = ({ withheld }: Entry<PhotoBody>): boolean =>
  withheld?.fields.includes(thePicture) === true

/**
 * Whether the picture of a photo can be looked at, and so be a proof. A picture that was withheld is withheld for every
 * record that names it: the same people are in it.
 */
export function pictureState(file: TeamFile, sha256: string): PictureState {
  if (indexOf(file).withheld.has(sha256)) return 'withheld'
  return file.picturesHeld.has(sha256) ? 'held' : 'not here yet'
}

/** The record that withheld a picture; undefined while nothing did. */
export const withheldBy = (file: TeamFile, sha256: string): string | undefined =>
  indexOf(file).withheld.get(sha256)

/** The photos that bear out a report: the one that it was read off, and those added to it later. */
export const photosOfReport = (file: TeamFile, reportId: string): readonly Entry<PhotoBody>[] =>
  indexOf(file).ofReport.get(reportId) ?? []

/**
 * What is known of the picture that bears out a report, of several the best; `withdrawn` where the photo that it was read
 * off is, and no other bears it out; undefined where it has none.
 */
export function photoStateOf(
  file: TeamFile,
  { id, body: { proof } }: Entry<ReportBody>,
): PictureState | 'withdrawn' | undefined {
  const readOff = proof?.kind === 'photo' ? file.photos.get(proof.photoId) : undefined
  const counted = readOff === undefined || readOff.withdrawn !== undefined ? [] : [readOff]
  const states = [...counted, ...photosOfReport(file, id)].map(({ body }) => pictureState(file, body.sha256))
  const best = bestFirst.find((state) => states.includes(state))
  if (best !== undefined || proof?.kind !== 'photo') return best
  return readOff === undefined ? 'not here yet' : 'withdrawn'
}

const bestFirst = ['held', 'not here yet', 'withheld'] as const

/** The photos of a case, of whatever visit, oldest first. */
export const photosOfCase = (file: TeamFile, caseId: string): readonly Entry<PhotoBody>[] =>
  indexOf(file).ofCase.get(file.keptId(caseId)) ?? []

/** The photos of a furnace, those of its cases included, newest first. */
export const photosOfFurnace = (file: TeamFile, furnaceId: string): Entry<PhotoBody>[] => {
  const kept = file.keptId(furnaceId)
  const isOf = (id: string | undefined): boolean => id !== undefined && file.keptId(id) === kept
  return counting(file.photos)
    .filter(
      ({ body }) =>
        isOf(body.furnaceId) ||
        (body.caseId !== undefined && isOf(file.cases.get(body.caseId)?.body.furnaceId)),
    )
    .sort((one, other) => oldestFirst(other, one))
}

/** The reports that count and were read off a photo, oldest first: two records of one picture are one photo. */
export const readingsOfPhoto = (file: TeamFile, photo: Entry<PhotoBody>): readonly Entry<ReportBody>[] =>
  indexOf(file).readings.get(photo.body.sha256) ?? []
