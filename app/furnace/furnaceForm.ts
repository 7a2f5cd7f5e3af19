import { feetOf, metresOf } from '@/lib/catalogue/units'
import { type Result, success } from '@/lib/core/result'
import type { Entry } from '@/lib/records/fold/entry'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { readNumber } from '../equipment/form/readNumber'
import type { FormAnswer } from '../equipment/form/useRecordForm'

export type FurnaceForm = {
  siteLabel: string
  branch: string
  model: string
  rangeId: string
  rangeTyped: string
  revision: string
  serial: string
  elevationFeet: string
  fuel: FurnaceBody['fuel']
  ventFeet: string
  ventMaterial: string
  note: string
  twin: string
}

const feetText = (metres: number | undefined): string =>
  metres === undefined ? '' : String(Math.round(feetOf(metres)))

/** Starts from a record that is to be said anew, or from nothing. */
export const freshFurnace = (from?: FurnaceBody): FurnaceForm => ({
  siteLabel: from?.siteLabel ?? '',
  branch: from?.branch ?? '',
  model: from?.model ?? '',
  rangeId: from?.rangeId ?? '',
  rangeTyped: '',
  revision: from?.revision ?? '',
  serial: from?.serial ?? '',
  elevationFeet: feetText(from?.elevationMetres),
  fuel: from?.fuel ?? 'not stated',
  ventFeet: feetText(from?.ventLengthMetres),
  ventMaterial: from?.ventMaterial ?? '',
  note: from?.note ?? '',
  twin: '',
})

/**
 * Starts from the furnace that another one has taken the place of: the site and its height stay as they are,
 * everything else is read off the new plate.
 */
export const freshReplacement = (old: Entry<FurnaceBody>): FurnaceForm => ({
  ...freshFurnace(),
  siteLabel: old.body.siteLabel,
  branch: old.body.branch ?? '',
  elevationFeet: feetText(old.body.elevationMetres),
  twin: `replaces ${old.id}`,
})

const minus = /^\s*[-−]/

/** Feet as they are typed, in metres; undefined for an empty field. A minus lies below the sea. */
export function metresTyped(text: string, what: string, example: string): Result<number | undefined> {
  if (text.trim() === '') return success(undefined)
  const read = readNumber(text.replace(minus, ''), what, example)
  return read.ok ? success(metresOf(minus.test(text) ? -read.value : read.value)) : read
}

/**
 * What the form of a furnace amounts to. Feet are converted exactly; what is left empty is left out.
 * @param replaces the id of the furnace whose place it takes
 */
export function readFurnaceForm(form: FurnaceForm, replaces?: string): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.siteLabel.trim() === '') gaps.siteLabel = 'Type the label by which your team knows the site.'
  if (form.model.trim() === '') gaps.model = 'Type the model number, every character of the data plate.'
  const elevation = metresTyped(form.elevationFeet, 'the elevation in feet', '4800')
  const vent = metresTyped(form.ventFeet, 'the length of the vent in feet', '25')
  if (!elevation.ok) gaps.elevationMetres = elevation.problem.message
  if (!vent.ok) gaps.ventLengthMetres = vent.problem.message
  if (!elevation.ok || !vent.ok || Object.keys(gaps).length > 0) return { gaps }
  return {
    body: {
      siteLabel: form.siteLabel,
      branch: form.branch,
      rangeId: form.rangeId,
      model: form.model,
      revision: form.revision,
      serial: form.serial,
      elevationMetres: elevation.value,
      fuel: form.fuel,
      ventLengthMetres: vent.value,
      ventMaterial: form.ventMaterial,
      replaces,
      note: form.note,
    },
  }
}
