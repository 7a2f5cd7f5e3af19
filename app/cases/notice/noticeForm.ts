import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'
import type { FormAnswer } from '../../equipment/form/useRecordForm'
import { withOffset, withoutOffset } from '../history/momentWords'

/** What is typed and chosen of a shut-down notice. */
export type NoticeForm = {
  gas: ShutDownNoticeBody['gas'] | ''
  power: ShutDownNoticeBody['power'] | ''
  tagged: boolean
  found: string
  doNotRelightUntil: string
  told: string
  /** A date and time of this device’s clock, as the field of a form holds it. */
  toldAt: string
  writtenNotice: boolean
  authority: NonNullable<ShutDownNoticeBody['authority']> | ''
  authorityWho: string
  heatAndFrost: string
  on: string
  note: string
  /** Whether the visit ends with it. */
  endsVisit: 'yes' | 'no' | ''
}

export const freshNotice = (about: Pick<NoticeForm, 'found' | 'on' | 'endsVisit'>): NoticeForm => ({
  gas: '',
  power: '',
  tagged: false,
  doNotRelightUntil: '',
  told: '',
  toldAt: '',
  writtenNotice: false,
  authority: '',
  authorityWho: '',
  heatAndFrost: '',
  note: '',
  ...about,
})

/** A notice that is on file, to be written anew with what it does not say yet. */
export const noticeAgain = (body: ShutDownNoticeBody): NoticeForm => ({
  gas: body.gas,
  power: body.power,
  tagged: body.tagged,
  found: body.found,
  doNotRelightUntil: body.doNotRelightUntil,
  told: body.told ?? '',
  toldAt: body.toldAt === undefined ? '' : withoutOffset(body.toldAt),
  writtenNotice: body.writtenNotice,
  authority: body.authority ?? '',
  authorityWho: body.authorityWho ?? '',
  heatAndFrost: body.heatAndFrost ?? '',
  on: body.on,
  note: body.note ?? '',
  endsVisit: 'no',
})

/** A text of several lines as the one line that a record holds. */
const oneLine = (text: string): string => text.replaceAll(/\s*\n\s*/g, ' ').trim()

const said = (text: string): string | undefined => (text.trim() === '' ? undefined : oneLine(text))

/** What the form says so far, whether it is enough for a record or not. What is empty is left out. */
export const noticeSoFar = (form: NoticeForm): Partial<ShutDownNoticeBody> => ({
  ...(form.gas === '' ? {} : { gas: form.gas }),
  ...(form.power === '' ? {} : { power: form.power }),
  tagged: form.tagged,
  found: said(form.found),
  doNotRelightUntil: said(form.doNotRelightUntil),
  told: said(form.told),
  toldAt: withOffset(form.toldAt),
  writtenNotice: form.writtenNotice,
  ...(form.authority === '' ? {} : { authority: form.authority }),
  ...(form.authority === 'told' ? { authorityWho: said(form.authorityWho) } : {}),
  heatAndFrost: said(form.heatAndFrost),
  on: form.on,
  note: form.note,
})

/**
 * What the form of a notice amounts to. Little is demanded, because a furnace is left off in a hurry; what else the
 * next person and the law will ask for is listed, and the notice is kept without it.
 */
export function readNoticeForm(
  form: NoticeForm,
  of: Pick<ShutDownNoticeBody, 'furnaceId' | 'caseId'>,
  mayEndVisit: boolean,
): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.gas === '') gaps.gas = 'Say whether the gas is off.'
  if (form.power === '') gaps.power = 'Say whether the power is off.'
  if (form.found.trim() === '') gaps.found = 'Say what was found, so that nobody lights it unknowing.'
  if (form.doNotRelightUntil.trim() === '') gaps.doNotRelightUntil = 'Say what has to be done first.'
  if (form.on === '') gaps.on = 'Give the day.'
  if (mayEndVisit && form.endsVisit === '') gaps.endsVisit = 'Say whether your visit ends with it.'
  return Object.keys(gaps).length > 0 ? { gaps } : { body: { ...of, ...noticeSoFar(form) } }
}
