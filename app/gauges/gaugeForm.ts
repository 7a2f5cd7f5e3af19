import { accuracyForms } from '@/lib/catalogue/accuracyForms'
import { type PressureUnit, toPascals, unitLabel } from '@/lib/core/pressure'
import type { Result } from '@/lib/core/result'
import { readNumber } from '../equipment/form/readNumber'
import type { FormAnswer } from '../equipment/form/useRecordForm'

type AccuracyKey = (typeof accuracyForms)[number]['key']
export type AccuracyField = (typeof accuracyForms)[number]['fields'][number]

/** What is typed of a gauge. Span and resolution are in the unit that it displays. */
export type GaugeForm = {
  name: string
  unit: PressureUnit
  accuracy: AccuracyKey | ''
  percentOfReading: string
  counts: string
  percentOfSpan: string
  span: string
  resolution: string
  calibrationDue: string
  note: string
  twin: string
}

export const freshGauge = (unit: PressureUnit): GaugeForm => ({
  name: '',
  unit,
  accuracy: '',
  percentOfReading: '',
  counts: '',
  percentOfSpan: '',
  span: '',
  resolution: '',
  calibrationDue: '',
  note: '',
  twin: '',
})

const asked: Readonly<Record<AccuracyField, readonly [what: string, example: string]>> = {
  percentOfReading: ['the per cent of the reading', '1'],
  counts: ['the counts', '2'],
  percentOfSpan: ['the per cent of full scale', '0.5'],
}

/** What the form of a gauge amounts to. Only the figures that its accuracy form asks for are taken. */
export function readGaugeForm(form: GaugeForm): FormAnswer {
  const gaps: Record<string, string> = {}
  const figure = (field: string, read: Result<number>): number | undefined => {
    if (!read.ok) gaps[field] = read.problem.message
    return read.ok ? read.value : undefined
  }
  const pressure = (field: 'span' | 'resolution', what: string, example: string): number | undefined => {
    const value = figure(
      `${field}Pascals`,
      readNumber(form[field], `${what} in ${unitLabel[form.unit]}`, example),
    )
    return value === undefined ? undefined : toPascals(value, form.unit)
  }
  if (form.name.trim() === '') gaps.name = 'Type what is written on the gauge, or what your team calls it.'
  const accuracy = accuracyForms.find(({ key }) => key === form.accuracy)
  if (accuracy === undefined) gaps.accuracy = 'Choose the form in which its sheet states its accuracy.'
  const figures: Partial<Record<AccuracyField, number>> = {}
  for (const field of accuracy?.fields ?? []) {
    const value = figure(field, readNumber(form[field], ...asked[field]))
    if (value !== undefined && field !== 'counts' && value > 100) {
      gaps[field] = 'More than 100 per cent is no accuracy. Look again at the sheet.'
    }
    figures[field] = value
  }
  const spanPascals = pressure('span', 'the full scale', '20')
  const resolutionPascals = pressure('resolution', 'the smallest step', '0.01')
  if (Object.keys(gaps).length > 0) return { gaps }
  return {
    body: {
      name: form.name,
      unit: form.unit,
      ...figures,
      combine: accuracy?.combine,
      spanPascals,
      resolutionPascals,
      calibrationDue: form.calibrationDue,
      note: form.note,
    },
  }
}
