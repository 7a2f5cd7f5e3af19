import { mayFit, usualGuardSettings } from '@/lib/core/guard'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FormAnswer } from '../equipment/form/useRecordForm'
import { readMinutes } from './readMinutes'

export type RepairForm = {
  positionId: string
  done: string
  /** Whether a pressure switch was replaced; nothing is taken for granted. */
  switchReplaced: 'yes' | 'no' | ''
  fittedPart: string
  partTyped: string
  /** Where the switch came from. */
  partFrom: string
  parts: string
  /** What was found fitted and is put right by it. */
  putsRight: string
  minutes: string
  on: string
  note: string
}

/** What a repair is of: a furnace, and, when it is recorded from there, one visit of a case. */
export type RepairOf = { furnaceId: string; caseId?: string; visitId?: string }

/** The address of the form, for a repair of this furnace or of this visit. */
export const repairHref = ({ furnaceId, caseId, visitId }: RepairOf): string =>
  `/furnace/repair?${new URLSearchParams({
    furnace: furnaceId,
    ...(caseId === undefined ? {} : { case: caseId }),
    ...(visitId === undefined ? {} : { visit: visitId }),
  })}`

/** What the record takes at the most; said here, so that everything that is wrong is told at once. */
const longestDone = 500
const mostMinutes = 2880

/**
 * What the form of a repair amounts to. A factory part must be listed for the very position it went into; any other
 * part is left for the record's own rule to refuse. Whether it was wise to replace a switch is not asked here: what
 * was done can always be recorded.
 */
export function readRepairForm(form: RepairForm, of: RepairOf, file: TeamFile): FormAnswer {
  const gaps: Record<string, string> = {}
  const minutes = readMinutes(form.minutes)
  const swapped = form.switchReplaced === 'yes'
  if (form.done.trim() === '') gaps.done = 'Say what was done.'
  if (form.on === '') gaps.on = 'Give the day of the repair.'
  if (form.switchReplaced === '') gaps.switchReplaced = 'Say whether a pressure switch was replaced.'
  if (swapped && form.fittedPart === '')
    gaps.fittedPart =
      'Choose the part that was fitted. Is it an adjustable or general-purpose switch? Record it as found fitted.'
  if (swapped && form.positionId === '') gaps.positionId = 'Say which switch position the part went into.'
  if (!minutes.ok) gaps.minutes = minutes.problem.message
  else if ((minutes.value ?? 0) > mostMinutes) gaps.minutes = 'More than two days is a slip.'
  if (form.done.trim().length > longestDone)
    gaps.done = `What was done is longer than ${longestDone} characters.`
  if (Object.keys(gaps).length > 0 || !minutes.ok) return { gaps }

  const part = swapped ? file.parts.get(file.keptId(form.fittedPart))?.body : undefined
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
  const { positionId, done, parts, partFrom, on, note, putsRight } = form
  return {
    body: {
      ...of,
      positionId,
      done,
      switchReplaced: swapped,
      ...(swapped ? { fittedPart: form.fittedPart, partFrom } : {}),
      parts,
      putsRight,
      minutes: minutes.value,
      on,
      note,
    },
  }
}
