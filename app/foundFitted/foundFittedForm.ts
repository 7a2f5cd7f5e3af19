import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import type { FormAnswer } from '../equipment/form/useRecordForm'

export type FoundFittedForm = {
  furnaceId: string
  furnaceTyped: string
  model: string
  positionId: string
  what: FoundFittedBody['what'] | ''
  printed: string
  partId: string
  partTyped: string
  fittedWhen: string
  fittedBy: 'us' | 'somebody else' | 'not known' | ''
  who: string
  foundOn: string
  note: string
}

export const freshFoundFitted = (
  about: Pick<FoundFittedForm, 'furnaceId' | 'positionId' | 'foundOn'> & Partial<FoundFittedForm>,
): FoundFittedForm => ({
  furnaceTyped: '',
  model: '',
  what: '',
  printed: '',
  partId: '',
  partTyped: '',
  fittedWhen: '',
  fittedBy: '',
  who: '',
  note: '',
  ...about,
})

/**
 * What the form of a switch found fitted amounts to. Nothing in it is judged, only asked for: the truth is always
 * accepted, and “not known” and “nothing” are answers.
 */
export function readFoundFittedForm(form: FoundFittedForm): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.what === '') gaps.what = 'Choose what is in, or “not known yet”.'
  if (form.printed.trim() === '') gaps.printed = 'Type what is printed on it, or the word nothing.'
  if (form.fittedWhen.trim() === '') gaps.fittedWhen = 'Type when it was fitted, or not known.'
  if (form.fittedBy === '') gaps.fittedBy = 'Say who fitted it. “Us” is an answer like any other.'
  if (form.foundOn === '') gaps.foundOn = 'Give the day on which it was found.'
  if (Object.keys(gaps).length > 0) return { gaps }
  const { furnaceId, model, positionId, partId, printed, what, fittedWhen, fittedBy, who, foundOn, note } =
    form
  return {
    body: {
      furnaceId,
      model: furnaceId === '' ? model : undefined,
      positionId,
      partId,
      printed,
      what,
      fittedWhen,
      fittedBy: fittedBy === 'somebody else' && who.trim() !== '' ? who : fittedBy,
      foundOn,
      note,
    },
  }
}
