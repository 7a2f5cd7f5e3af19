import { mayFit, usualGuardSettings } from '@/lib/core/guard'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FormAnswer } from '../equipment/form/useRecordForm'

export type RepairForm = {
  positionId: string
  done: string
  fittedPart: string
  partTyped: string
  on: string
  note: string
}

/**
 * What the form of a repair amounts to. A factory part must be listed for the very position it went into; any other
 * part is left for the record's own rule to refuse.
 */
export function readRepairForm(form: RepairForm, furnaceId: string, file: TeamFile): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.done.trim() === '') gaps.done = 'Say what was done.'
  if (form.on === '') gaps.on = 'Give the day of the repair.'
  if (form.fittedPart !== '' && form.positionId === '')
    gaps.positionId = 'Say which switch position the part went into.'
  if (Object.keys(gaps).length > 0) return { gaps }

  const part = file.parts.get(file.keptId(form.fittedPart))?.body
  if (part?.class === 'factory') {
    const positionKeys = part.positionIds.map(file.keptId)
    const fits = mayFit(
      {
        partClass: part.class,
        partNumber: part.partNumber,
        adjustable: part.fieldAdjustable,
        // A part is on file as factory only with the maker who lists it and where, so the maker's word is behind it.
        listing: { by: 'current literature', where: part.listedIn ?? '', positionKeys },
      },
      { key: file.keptId(form.positionId) },
      usualGuardSettings,
    )
    if (!fits.ok) {
      return { refusal: { rule: 'only the exact factory part', sentence: fits.problem.message } }
    }
  }
  const { positionId, done, fittedPart, on, note } = form
  return { body: { furnaceId, positionId, done, fittedPart, on, note } }
}
