import { type PressureUnit, readPressureText } from '@/lib/core/pressure'
import type { FormAnswer } from '../../equipment/form/useRecordForm'

export type SwitchCheckForm = {
  what: 'off the furnace' | 'at rest' | 'voltage across the closed contact'
  /** Pulls, or volts, one after another with blanks between them. */
  values: string
  gaugeId: string
  held: 'held' | 'leaked down' | 'not checked'
  pumpLineProvenTight: boolean
  inducerStopped: boolean
  hoseOff: boolean
  wiresOff: boolean
  underLoad: boolean
  terminals: 'clear' | 'fault found' | 'not checked'
  contact: 'open' | 'closed' | 'not read'
}

/** Said of a pull at which the switch did not close at all. */
const didNotClose = 'none'

/** Reads the form into the body of a switch check. */
export function readSwitchCheckForm(
  form: SwitchCheckForm,
  of: { caseId: string; furnaceId: string; visitId: string; positionId: string },
  unit: PressureUnit,
): FormAnswer {
  const { what, contact } = form
  const typed = form.values.split(/[;\s]+/).filter((text) => text !== '')
  if (what === 'at rest') {
    const { inducerStopped, hoseOff, wiresOff } = form
    return { body: { ...of, what, inducerStopped, hoseOff, wiresOff, contact } }
  }
  if (what === 'voltage across the closed contact') {
    const volts = typed.map((text) => Number(text.replace(',', '.')))
    if (volts.length === 0 || !volts.every((value) => value >= 0))
      return { gaps: { values: 'Type each voltage with a blank between them, for instance 0.7 0.8 0.7.' } }
    return { body: { ...of, what, volts, underLoad: form.underLoad, terminals: form.terminals, contact } }
  }
  const pulls = typed.map((text) => {
    if (text.toLowerCase() === didNotClose) return 'did not close' as const
    const read = readPressureText(text, { as: 'reading', ownUnit: unit })
    return read.ok ? read.value.pascals : undefined
  })
  const gaps: Record<string, string> = {}
  if (pulls.length === 0 || pulls.includes(undefined))
    gaps.values = `Type where it worked on each pull, with a blank between them; “${didNotClose}” where it did not close.`
  if (form.gaugeId === '') gaps.gaugeId = 'Choose the gauge on the pump’s tee.'
  return Object.keys(gaps).length > 0
    ? { gaps }
    : {
        body: {
          ...of,
          what,
          pulls,
          gaugeId: form.gaugeId,
          heldForTenSeconds: form.held,
          pumpLineProvenTight: form.pumpLineProvenTight,
        },
      }
}
