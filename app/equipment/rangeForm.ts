import type { EquipmentRangeBody } from '@/lib/records/kinds/equipmentRange'
import type { FormAnswer } from './form/useRecordForm'
import { patternsIn } from './modelPatterns'

export type RangeForm = {
  makerId: string
  name: string
  /** One model number or pattern a line. */
  patterns: string
  fuel: EquipmentRangeBody['fuel']
  heat: EquipmentRangeBody['heat']
  revisionFrom: string
  revisionTo: string
  serialFrom: string
  serialTo: string
  note: string
  twin: string
  /** The ranges with a name near it that it is not. */
  another: string
}

export const freshRange = (model: string): RangeForm => ({
  makerId: '',
  name: '',
  patterns: model,
  fuel: 'not stated',
  heat: 'not stated',
  revisionFrom: '',
  revisionTo: '',
  serialFrom: '',
  serialTo: '',
  note: '',
  twin: '',
  another: '',
})

const ends = (from: string, to: string): { from?: string; to?: string } | undefined =>
  from.trim() === '' && to.trim() === ''
    ? undefined
    : { ...(from.trim() === '' ? {} : { from }), ...(to.trim() === '' ? {} : { to }) }

/** What the form of a furnace range amounts to. A revision or serial range left empty is left out, not filled in. */
export function readRangeForm(form: RangeForm): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.makerId === '') gaps.makerId = 'Choose the maker, or add it first.'
  if (form.name.trim() === '') gaps.name = 'Type the name of the range, as its literature calls it.'
  const modelPatterns = patternsIn(form.patterns)
  if (modelPatterns.some((pattern) => !/[^*?\s]/.test(pattern)))
    gaps.modelPatterns =
      'A pattern of signs alone would stand for every furnace. Give the characters that are printed.'
  if (Object.keys(gaps).length > 0) return { gaps }
  return {
    body: {
      makerId: form.makerId,
      name: form.name,
      modelPatterns,
      fuel: form.fuel,
      heat: form.heat,
      revisions: ends(form.revisionFrom, form.revisionTo),
      serials: ends(form.serialFrom, form.serialTo),
      note: form.note,
    },
  }
}
