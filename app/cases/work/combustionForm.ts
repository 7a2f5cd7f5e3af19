import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { FormAnswer } from '../../equipment/form/useRecordForm'

export type CombustionForm = {
  when: CombustionTestBody['when']
  roomCoPpm: string
  roomCoLimitPpm: string
  flueCoPpm: string
  oxygenPercent: string
  /** The meter works the figure out by itself. */
  showsAirFree: boolean
  flueCoLimitPpm: string
  flueCoLimitFrom: string
  minutesRunning: string
  minutesAsked: string
  meter: string
}

export const freshCombustion: Omit<CombustionForm, 'when'> = {
  roomCoPpm: '',
  roomCoLimitPpm: '',
  flueCoPpm: '',
  oxygenPercent: '',
  showsAirFree: false,
  flueCoLimitPpm: '',
  flueCoLimitFrom: '',
  minutesRunning: '',
  minutesAsked: '',
  meter: '',
}

const numbers = [
  'roomCoPpm',
  'roomCoLimitPpm',
  'oxygenPercent',
  'flueCoLimitPpm',
  'minutesRunning',
  'minutesAsked',
] as const

/**
 * Reads the form: each number as typed, a decimal comma allowed; what is left empty is left out. Everything that is
 * missing or cannot be read is told at once.
 */
export function readCombustionForm(
  form: CombustionForm,
  of: { caseId: string; furnaceId: string; visitId: string },
): FormAnswer {
  const gaps: Record<string, string> = {}
  const body: Record<string, unknown> = { ...of, when: form.when }
  for (const field of numbers) {
    const text = form[field].trim()
    if (text === '') continue
    const value = asNumber(text)
    if (value === undefined)
      gaps[field] = field.startsWith('minutes')
        ? `“${text}” is no number. Type the minutes, for instance 15.`
        : `“${text}” is no number. Type what the meter shows, for instance 24.`
    else if (value < 0 && field.startsWith('minutes')) gaps[field] = 'Minutes are zero or more.'
    else body[field] = value
  }
  const flue = form.flueCoPpm.split(/[\s;/]+/).filter((text) => text !== '')
  const values = flue.map(asNumber)
  if (values.includes(undefined))
    gaps.flueCoPpm = 'Type numbers with a blank between them, for instance 24 26 25.'
  if (flue.length > 0 && !form.showsAirFree && form.oxygenPercent.trim() === '')
    gaps.oxygenPercent = 'Type the oxygen, or tick that the meter shows CO air-free: limits are air-free.'
  if (form.roomCoPpm.trim() !== '' && form.roomCoLimitPpm.trim() === '')
    gaps.roomCoLimitPpm =
      'Type the limit that your employer has set for CO in the room. If none is set, type 0: then any CO counts.'
  if (form.flueCoLimitPpm.trim() !== '' && form.flueCoLimitFrom.trim() === '')
    gaps.flueCoLimitFrom = 'Say where the limit is printed: this unit’s manual and page.'
  if (form.roomCoPpm.trim() === '' && flue.length === 0)
    gaps.roomCoPpm = 'Type what the meter shows in the room or in the flue.'
  body.flueCoPpm = values
  if (form.flueCoLimitFrom.trim() !== '') body.flueCoLimitFrom = form.flueCoLimitFrom
  if (form.meter.trim() !== '') body.meter = form.meter
  return Object.keys(gaps).length > 0 ? { gaps } : { body }
}

const asNumber = (text: string): number | undefined => {
  const value = Number(text.replace(',', '.'))
  return Number.isFinite(value) ? value : undefined
}
