import type { CauseGroup } from '@/lib/catalogue/causes'
import { success } from '@/lib/core/result'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody, EndingWay } from '@/lib/records/kinds/ending'
import { putBackItems as items, type putBackItems } from '@/lib/records/putBackItems'
import { readNumber } from '../../equipment/form/readNumber'
import type { FormAnswer } from '../../equipment/form/useRecordForm'
import { readMinutes } from '../../furnace/readMinutes'
import { factoryOnly } from './partWaitedFor'

type PutBackItem = (typeof putBackItems)[number]

/** What is typed and chosen of an ending; kept as a draft, so all of it is plain text and words. */
export type EndForm = {
  how: EndingWay | ''
  mainGroup: CauseGroup | 'not on the list' | ''
  mainTyped: string
  mainCause: string
  contributingGroup: CauseGroup | 'not on the list' | ''
  contributingTyped: string
  contributingCause: string
  confirmingTest: NonNullable<EndingBody['confirmingTest']> | ''
  minutes: string
  thermostatCycles: string
  putBack: Readonly<Partial<Record<PutBackItem, 'done' | 'nothing'>>>
  partNumber: string
  supersessionChecked: boolean
  orderedWhere: string
  followUpOn: string
  declinedBecause: string
  note: string
}

export const freshEnd: EndForm = {
  how: '',
  mainGroup: '',
  mainTyped: '',
  mainCause: '',
  contributingGroup: '',
  contributingTyped: '',
  contributingCause: '',
  confirmingTest: '',
  minutes: '',
  thermostatCycles: '',
  putBack: {},
  partNumber: '',
  supersessionChecked: false,
  orderedWhere: '',
  followUpOn: '',
  declinedBecause: '',
  note: '',
}

/** An ending that is on file, to be written anew with what it does not say yet. */
export const endAgain = (body: EndingBody): EndForm => ({
  ...freshEnd,
  how: body.how,
  mainCause: body.mainCause ?? '',
  contributingCause: body.contributingCause ?? '',
  confirmingTest: body.confirmingTest ?? '',
  minutes: body.minutes?.toString() ?? '',
  thermostatCycles: body.thermostatCycles?.toString() ?? '',
  putBack: {
    ...Object.fromEntries((body.putBack ?? []).map((item) => [item, 'done'])),
    ...Object.fromEntries((body.nothingToPutBack ?? []).map((item) => [item, 'nothing'])),
  },
  partNumber: body.partNumber ?? '',
  supersessionChecked: body.supersessionChecked ?? false,
  orderedWhere: body.orderedWhere ?? '',
  followUpOn: body.followUpOn ?? '',
  declinedBecause: body.declinedBecause ?? '',
  note: body.note ?? '',
})

/** What an ending says by itself, because it is on record in the case: the repairs, and the notice that stands. */
export type OnRecord = Pick<EndingBody, 'caseId' | 'visitId'> & {
  repairIds: readonly string[]
  noticeId: string | undefined
}

const said = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim())

/** What a form says of its chosen way of ending; what another way would ask for is left out. */
export function endingSoFar(form: EndForm & { how: EndingWay }, onRecord: OnRecord): EndingBody {
  const { how } = form
  const { caseId, visitId, repairIds, noticeId } = onRecord
  const minutes = readMinutes(form.minutes)
  const cycles = readCycles(form.thermostatCycles)
  const chosen = (which: 'done' | 'nothing') => items.filter((item) => form.putBack[item] === which)
  const repaired = {
    mainCause: said(form.mainCause),
    contributingCause: said(form.contributingCause),
    ...(repairIds.length === 0 ? {} : { repairIds: [...repairIds] }),
    ...(minutes.ok ? { minutes: minutes.value } : {}),
  }
  const ofWay: Record<EndingWay, Partial<EndingBody>> = {
    'repaired and proven': {
      ...repaired,
      ...(form.confirmingTest === '' ? {} : { confirmingTest: form.confirmingTest }),
      ...(cycles.ok ? { thermostatCycles: cycles.value } : {}),
      putBack: chosen('done'),
      nothingToPutBack: chosen('nothing'),
    },
    'repaired, not proven': repaired,
    'waiting for part': {
      partNumber: said(form.partNumber),
      supersessionChecked: form.supersessionChecked,
      orderedWhere: said(form.orderedWhere),
    },
    'no fault found': { followUpOn: said(form.followUpOn) },
    'repair declined': { declinedBecause: said(form.declinedBecause) },
    'left off': { noticeId },
  }
  return { caseId, visitId, how, ...ofWay[how], note: said(form.note) }
}

const readCycles = (text: string) =>
  text.trim() === '' ? success(undefined) : readNumber(text, 'the cycles', '3')

/**
 * What the form amounts to. Nothing that is missing keeps an ending from being recorded; only what cannot be read, and
 * a part that may not be fitted.
 */
export function readEndForm(form: EndForm, onRecord: OnRecord, file: TeamFile): FormAnswer {
  if (form.how === '') return { gaps: { how: 'Choose how the visit ended.' } }
  const gaps: Record<string, string> = {}
  const isProven = form.how === 'repaired and proven'
  const minutes = readMinutes(form.minutes)
  const cycles = readCycles(form.thermostatCycles)
  if ((isProven || form.how === 'repaired, not proven') && !minutes.ok) gaps.minutes = minutes.problem.message
  if (isProven && !cycles.ok) gaps.thermostatCycles = cycles.problem.message
  if (isProven && cycles.ok && cycles.value !== undefined && !Number.isInteger(cycles.value))
    gaps.thermostatCycles = 'Type the cycles as a whole number, for instance 3.'
  if (Object.keys(gaps).length > 0) return { gaps }
  if (form.how === 'waiting for part') {
    const fits = factoryOnly(file, form.partNumber)
    if (!fits.ok) {
      const rule = fits.problem.code === 'bypass' ? 'no bypass' : 'no general-purpose switch'
      return { refusal: { rule, sentence: fits.problem.message } }
    }
  }
  return { body: endingSoFar({ ...form, how: form.how }, onRecord) }
}
