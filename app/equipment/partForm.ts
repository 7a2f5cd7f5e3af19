import type { PartBody } from '@/lib/records/kinds/part'
import type { FormAnswer } from './form/useRecordForm'

export type PartForm = {
  partNumber: string
  class: PartBody['class'] | ''
  fieldAdjustable: 'yes' | 'no' | ''
  makerId: string
  listedIn: string
  positionIds: string[]
  positionTyped: string
  note: string
  twin: string
  /** The parts with a number near it that it is not. */
  another: string
}

export const freshPart = (about: {
  partNumber: string
  makerId: string
  positionIds: string[]
}): PartForm => ({
  ...about,
  class: '',
  fieldAdjustable: '',
  listedIn: '',
  positionTyped: '',
  note: '',
  twin: '',
  another: '',
})

/** Whether what is typed makes it a general-purpose switch, whatever else is said of it. */
export const isGeneralPurpose = (form: PartForm): boolean =>
  form.class === 'general-purpose' || form.fieldAdjustable === 'yes'

/**
 * What the form of a part amounts to. No maker lists a general-purpose switch for a position, so it is recorded
 * with none.
 */
export function readPartForm(form: PartForm): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.partNumber.trim() === '') gaps.partNumber = 'Type the part number, every character.'
  if (form.fieldAdjustable === '')
    gaps.fieldAdjustable = 'Say whether its setting can be changed in the field.'
  if (form.class === '') gaps.class = 'Choose what it is, or “not known yet”.'
  if (form.class === 'factory' && form.makerId === '')
    gaps.makerId = 'Choose the maker who lists it. Without one, its class is not known.'
  if (Object.keys(gaps).length > 0) return { gaps }
  const listed = form.class !== 'general-purpose'
  return {
    body: {
      partNumber: form.partNumber,
      class: form.class,
      fieldAdjustable: form.fieldAdjustable === 'yes',
      makerId: listed ? form.makerId : undefined,
      positionIds: listed ? form.positionIds : [],
      listedIn: listed ? form.listedIn : undefined,
      note: form.note,
    },
  }
}
