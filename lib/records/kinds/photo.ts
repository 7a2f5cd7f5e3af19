import '../withoutEval'
import { z } from 'zod'
import type { SourceKind } from '@/lib/core/vocabulary'
import { defineKind, type Lookup, type Refusal, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { whyNotAfterEnding, whyNotOfCase } from '../ofCase'
import { whyNoPosition } from '../ofPosition'
import { withholdable } from '../withholdable'

/** What a photo shows, as far as it matters for what it proves. */
export const photoShows = ['rating label', 'data plate', 'gauge', 'document page', 'other'] as const
export type PhotoShows = (typeof photoShows)[number]

/** The picture formats that are kept. Others are turned into one of these on the device. */
export const pictureTypes = ['image/jpeg', 'image/png', 'image/webp'] as const
export type PictureType = (typeof pictureTypes)[number]

/** The most that one picture may weigh, in bytes: more than any that was shrunk on a device. */
export const mostPictureBytes = 16 * 1024 * 1024

/** The longest edge that a picture may have, in pixels. A shrunk one has a quarter. */
export const longestPictureEdge = 8192

export const pictureHash = z
  .string()
  .regex(/^[0-9a-f]{64}$/, 'A picture is named by the SHA-256 of its bytes: 64 hexadecimal digits.')

const edge = z.int().min(1).max(longestPictureEdge)

/**
 * A photo, named by the SHA-256 of the bytes that are sent apart from it. The record is taken in without them: they
 * may come later, and until then it proves nothing.
 */
export const photoBody = z
  .strictObject({
    sha256: pictureHash,
    mediaType: z.enum(pictureTypes),
    width: edge,
    height: edge,
    bytes: z.int().min(1).max(mostPictureBytes),
    /** When the camera says it was taken, by its own clock; without an offset where it states none. */
    capturedAt: z.iso.datetime({ offset: true, local: true }).optional(),
    shows: z.enum(photoShows),
    furnaceId: recordId.optional(),
    positionId: recordId.optional(),
    caseId: recordId.optional(),
    visitId: recordId.optional(),
    /** The finding that it shows, of the same case. */
    findingId: recordId.optional(),
    /** The report that it bears out, where that was said before the photo was taken. */
    reportId: recordId.optional(),
    /** What is to be seen, in a few words. */
    caption: line('What is to be seen', 200).optional(),
    note: note.optional(),
  })
  .refine(
    ({ furnaceId, positionId, caseId, reportId }) =>
      (furnaceId ?? positionId ?? caseId ?? reportId) !== undefined,
    { path: ['furnaceId'], message: 'A photo belongs to a furnace, a switch, a case or a report. Name one.' },
  )
  .refine(({ caseId, visitId, findingId }) => caseId !== undefined || (visitId ?? findingId) === undefined, {
    path: ['caseId'],
    message: 'A photo of a visit or a finding belongs to a case. Name the case as well.',
  })

export type PhotoBody = z.infer<typeof photoBody>

/** What can be read off a picture. What somebody said on the telephone can't. */
const readable: readonly SourceKind[] = [
  'factory switch label',
  'unknown switch label',
  'data plate',
  'current literature',
  'older literature',
  'parts listing',
  'bench check',
]

/** Whether a photo can bear out a report that rests on this. */
export const canBePhotographed = (source: string): boolean => readable.some((each) => each === source)

export const photo = defineKind<PhotoBody>({
  kind: 'photo',
  version: 1,
  versions: { 1: photoBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) =>
    [body.furnaceId, body.positionId, body.caseId, body.visitId, body.findingId, body.reportId].filter(
      (id) => id !== undefined,
    ),
  refusedBy: (body, lookup, said) =>
    whyNotOfCase(body, lookup) ??
    whyNoPosition(body.positionId, lookup) ??
    whyNotOfFinding(body, lookup) ??
    whyNotOfReport(body, lookup) ??
    (body.visitId === undefined ? undefined : whyNotAfterEnding(body.visitId, lookup, said.saidAt)),
  mayWithhold: withholdable.photo,
})

function whyNotOfFinding({ findingId, caseId }: PhotoBody, lookup: Lookup): Refusal | undefined {
  if (findingId === undefined) return undefined
  const finding = lookup(findingId)
  return finding?.kind === 'finding' && finding.body.caseId === caseId
    ? undefined
    : {
        rule: 'it belongs to its case',
        sentence: 'The finding belongs to another case. Open it from the right case.',
      }
}

function whyNotOfReport({ reportId }: PhotoBody, lookup: Lookup): Refusal | undefined {
  if (reportId === undefined) return undefined
  const report = lookup(reportId)
  return report?.kind === 'report' && canBePhotographed(String(report.body.source))
    ? undefined
    : {
        rule: 'a photo bears out what can be photographed',
        sentence:
          'Only a report that was read off something can be borne out by a photo of it: a label, a data plate, a page, a gauge. Add the photo to the furnace instead.',
      }
}
