import { amountWords, readAmount } from '@/lib/core/money'
import type { Entry } from '@/lib/records/fold/entry'
import type { AnyRepairBody } from '@/lib/records/kinds/repair'
import type { WarrantyAnswerBody } from '@/lib/records/kinds/warrantyAnswer'
import type { FormAnswer } from '../equipment/form/useRecordForm'

export type WarrantyForm = {
  partReturned: string
  /** Nothing is taken for granted. */
  outcome: WarrantyAnswerBody['outcome'] | ''
  amount: string
  currency: string
  organisationId: string
  answeredBy: string
  reasonGiven: string
  on: string
  reference: string
  note: string
}

/** The address of the form, for a part that came out in this repair. */
export const warrantyHref = (repairId: string): string => `/warranty?repair=${repairId}`

/** Every currency that the runtime knows by its letters (ISO 4217). */
const currencies: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'))

/**
 * What the form of a warranty answer amounts to. A currency without an amount is no claim: it may have been filled in
 * from the answer before.
 */
export function readWarrantyForm(form: WarrantyForm, repair: Entry<AnyRepairBody>): FormAnswer {
  const gaps: Record<string, string> = {}
  const { partReturned, outcome, organisationId, answeredBy, reasonGiven, on, reference, note } = form
  const currency = form.currency.trim().toUpperCase()
  const hasAmount = form.amount.trim() !== ''
  const amount = hasAmount ? readAmount(form.amount, currency) : undefined
  if (partReturned.trim() === '') gaps.partReturned = 'Type the number of the part that went back.'
  if (outcome === '') gaps.outcome = 'Say what became of it. If nobody has answered yet, it is waiting.'
  if (hasAmount && currency === '')
    gaps.currency = 'Say in which currency, by its three letters: USD for instance.'
  else if (hasAmount && !currencies.has(currency))
    gaps.currency = 'No currency has these letters. Three letters of ISO 4217 are meant: USD for instance.'
  if (amount !== undefined && !amount.ok) gaps.amountMinorUnits = amount.problem.message
  if (organisationId === '' && answeredBy.trim() === '')
    gaps.answeredBy = 'Say whose answer it is: choose the organisation, or type who it was.'
  if (on === '') gaps.on = 'Give the day.'
  else if (on < repair.body.on)
    gaps.on = 'This day is before the repair, so the part was still in the furnace. Check the day.'
  if (Object.keys(gaps).length > 0) return { gaps }
  return {
    body: {
      repairId: repair.id,
      partReturned,
      outcome,
      ...(amount?.ok ? { amountMinorUnits: amount.value, currency } : {}),
      organisationId,
      answeredBy,
      reasonGiven,
      on,
      reference,
      note,
    },
  }
}

/** An answer's amount in words; undefined where none is on record. */
export const amountOf = ({ amountMinorUnits, currency }: WarrantyAnswerBody): string | undefined =>
  amountMinorUnits === undefined || currency === undefined
    ? undefined
    : amountWords(amountMinorUnits, currency)

export const outcomeWords: Readonly<Record<WarrantyAnswerBody['outcome'], string>> = {
  credited: 'Credited',
  denied: 'Denied',
  waiting: 'Waiting',
}
