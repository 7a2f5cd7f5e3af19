import { type NewRecord, newRecordId } from '@/lib/device/device'
import type { PhotoShows } from '@/lib/records/kinds/photo'
import { type DraftBody, type ReportForm, takesPhoto } from './reportForm'

/** What a photo of a source shows. */
export function shownBy(source: ReportForm['source']): PhotoShows {
  if (source === 'data plate') return 'data plate'
  if (source === 'bench check') return 'gauge'
  return source === 'factory switch label' || source === 'unknown switch label'
    ? 'rating label'
    : 'document page'
}

/**
 * The records that a form amounts to: its reports, and its photo. The photo comes first where it is their proof; where
 * a named document is, it comes after and bears out the first of them.
 */
export function recordsWithPhoto(
  form: ReportForm,
  bodies: readonly DraftBody[],
  photoId: string,
): NewRecord[] {
  const reports = bodies.map((body) => ({ kind: 'report', body, id: newRecordId() }))
  const [first] = reports
  if (first === undefined || !takesPhoto(form)) return reports
  const { positionId, furnaceId, proof } = first.body
  const body = { ...form.photo, shows: shownBy(form.source), positionId, furnaceId }
  return proof?.kind === 'photo'
    ? [{ kind: 'photo', body, id: photoId }, ...reports]
    : [...reports, { kind: 'photo', body: { ...body, reportId: first.id }, id: photoId }]
}
