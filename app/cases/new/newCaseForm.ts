import type { NewRecord } from '@/lib/device/device'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseBody } from '@/lib/records/kinds/case'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { trimmed } from '../../equipment/form/trimmed'

/** What is typed of a new case and its first visit; kept as a draft. The furnace is in the address. */
export type NewCaseForm = {
  complaint: string
  circuit: CaseBody['circuit'] | ''
  serialSeen: string
  on: string
  weather: string
  licence: string
  note: string
}

/** Starts with today, and with the licence that this person worked under the last time. */
export const freshCase = (today: string, licence: string): NewCaseForm => ({
  complaint: '',
  circuit: '',
  serialSeen: '',
  on: today,
  weather: '',
  licence,
  note: '',
})

/** The licence on the newest visit that a person recorded; empty when there is none. */
export const lastLicence = (file: TeamFile, personId: string): string =>
  counting(file.visits)
    .filter(({ by, body }) => by === personId && body.licence !== undefined)
    .toSorted((one, other) => (one.at < other.at ? 1 : -1))[0]?.body.licence ?? ''

/**
 * What the form amounts to: a case and its first visit, said in one step, or what is still missing, by field.
 * @param caseId made beforehand, so that the visit can name its case
 */
export function readNewCase(
  form: NewCaseForm,
  furnace: Entry<FurnaceBody> | undefined,
  caseId: string,
): { records: NewRecord[] } | { gaps: Record<string, string> } {
  const gaps: Record<string, string> = {}
  if (furnace === undefined) gaps.furnaceId = 'Choose the furnace, or add it.'
  if (form.complaint.trim() === '') gaps.complaint = 'Type what is complained of, in the words of the caller.'
  if (form.circuit === '') gaps.circuit = 'Say whether it is about the proving circuit or something else.'
  if (form.on === '') gaps.on = 'Give the day of the visit.'
  if (furnace === undefined || Object.keys(gaps).length > 0) return { gaps }
  const { complaint, circuit, serialSeen, on, weather, licence, note } = form
  const otherSerial = serialSeen.trim() === furnace.body.serial ? '' : serialSeen
  return {
    records: [
      {
        id: caseId,
        kind: 'case',
        body: trimmed({ furnaceId: furnace.id, complaint, circuit, serialSeen: otherSerial, note }),
      },
      { kind: 'visit', body: trimmed({ caseId, on, licence, weather }) },
    ],
  }
}
