import { metresOf } from '@/lib/catalogue/units'
import type { PressureText, PressureUnit } from '@/lib/core/pressure'
import { readRatingText } from '@/lib/core/pressure'
import type { Result } from '@/lib/core/result'
import type { Action, Between, Sense, SourceKind, Stage, SwitchKind, Tap } from '@/lib/core/vocabulary'
import { canBePhotographed } from '@/lib/records/kinds/photo'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { ReportBody } from '@/lib/records/kinds/report'
import type { TakenPhoto } from '../ui/photo/takenPhoto'
import { looksTurnedRound } from './turnedRound'

/** Which furnaces a source says that its number holds for; whether it says so at all is a part of the answer. */
const covers = ['as stated', 'all', 'this serial', 'not stated'] as const
type Covers = (typeof covers)[number]

/** What a person typed about one source. Plain words and texts, so that it can be kept as a draft. */
export type ReportForm = {
  asWritten: string
  /** What a camera read for the text, until somebody says that it was checked; empty when it was typed. */
  asWrittenRead: string
  /** The unit of a number that states none; empty until somebody says so. */
  unit: PressureUnit | ''
  /** For a single number that does not say: whether it closes or opens there. */
  action: Action | ''
  sense: Sense | ''
  source: SourceKind | ''
  readOffPart: string
  partNumber: string
  /** What a camera read for the part number, as for the text. */
  partNumberRead: string
  documentName: string
  documentPage: string
  documentEdition: string
  organisation: string
  reference: string
  saidBy: string
  saidOn: string
  readBack: 'yes' | 'no' | ''
  secondPersonId: string
  gaugeId: string
  stage: Stage
  between: Between
  tap: Tap
  covers: Covers | ''
  revisionFrom: string
  revisionTo: string
  serialFrom: string
  serialTo: string
  elevationFromFeet: string
  elevationToFeet: string
  confirmed: boolean
  note: string
  /** The photo of what was read; its picture is on the device. */
  photo: TakenPhoto | null
}

export const freshReport = (position: PositionBody): ReportForm => ({
  asWritten: '',
  asWrittenRead: '',
  unit: '',
  action: '',
  sense: '',
  source: '',
  readOffPart: '',
  partNumber: '',
  partNumberRead: '',
  documentName: '',
  documentPage: '',
  documentEdition: '',
  organisation: '',
  reference: '',
  saidBy: '',
  saidOn: '',
  readBack: '',
  secondPersonId: '',
  gaugeId: '',
  stage: position.stage,
  between: 'not stated',
  tap: 'not stated',
  covers: '',
  revisionFrom: '',
  revisionTo: '',
  serialFrom: '',
  serialTo: '',
  elevationFromFeet: '',
  elevationToFeet: '',
  confirmed: false,
  note: '',
  photo: null,
})

/** What the text says, read in the unit that was chosen where it states none. */
export const readText = (form: ReportForm): Result<PressureText[]> =>
  readRatingText(form.asWritten, form.unit === '' ? {} : { ownUnit: form.unit })

const isCall = (source: ReportForm['source']) => source === 'distributor' || source === 'factory support'
const isPrinted = (source: ReportForm['source']) =>
  source === 'current literature' || source === 'older literature' || source === 'data plate'

export const proofAsked = (source: ReportForm['source']): 'call' | 'document' | 'part' | 'gauge' | 'none' => {
  if (isCall(source)) return 'call'
  if (isPrinted(source)) return 'document'
  if (source === 'factory switch label' || source === 'unknown switch label') return 'part'
  return source === 'bench check' ? 'gauge' : 'none'
}

/** Warnings about the size of a number: each of them names a slip that people make. */
const isOddSize = (code: string): boolean =>
  ['ten-times', 'a-tenth', 'manifold-pressure', 'outside-usual-range', 'confirm-value'].includes(code) ||
  code.includes('-as-')

const rangeFields = [
  'revisionFrom',
  'revisionTo',
  'serialFrom',
  'serialTo',
  'elevationFromFeet',
  'elevationToFeet',
] as const

/** Questions that must be answered before there is anything to record, in the order of the form. */
export function openQuestions(
  form: ReportForm,
  values: readonly PressureText[],
  kind: SwitchKind,
): Map<keyof ReportForm, string> {
  const open = new Map<keyof ReportForm, string>()
  if (values.some((value) => !value.unitStated) && form.unit === '') {
    open.set('unit', 'No unit is written. Say which it is; ask the source if you don’t know.')
  }
  if (values.length === 1 && values[0]?.action === undefined && form.action === '') {
    open.set('action', 'Say whether it closes or opens at this number, or that the source does not say.')
  }
  if (values.some((value) => value.sense === 'not stated') && form.sense === '') {
    open.set('sense', 'Say suction or pressure, or that the source does not say.')
  }
  if (form.source === '') open.set('source', 'Choose what the number rests on.')
  if (isCall(form.source) && form.readBack === '') {
    open.set('readBack', 'Say whether it was read back, digit by digit, and confirmed.')
  }
  if (isCall(form.source) && form.organisation.trim() === '') {
    open.set('organisation', 'Say whom you rang: a number that nobody said is no report.')
  }
  if (!covers.some((each) => each === form.covers)) open.set('covers', 'Say which furnaces it holds for.')
  if (form.covers === 'as stated' && !rangeFields.some((field) => form[field].trim() !== '')) {
    open.set('covers', 'Type the range that the source states, or choose one of the other answers.')
  }
  for (const field of ['elevationFromFeet', 'elevationToFeet'] as const) {
    if (form[field].trim() !== '' && !Number.isFinite(feet(form[field]))) {
      open.set(field, 'Type the elevation in feet as a number, for instance 4500.')
    }
  }
  if (values.some((value) => value.warnings.some(({ code }) => isOddSize(code))) && !form.confirmed) {
    open.set('confirmed', 'This is an unusual rating. Look again, and tick that it is what is written.')
  }
  if (looksTurnedRound(values, kind) && !form.confirmed) {
    open.set(
      'confirmed',
      'Make and break may have been swapped. Ask which is which, and tick only if it stands so.',
    )
  }
  return open
}

const feet = (text: string): number => Number(text.replaceAll(',', '').trim())

/** A report as far as the form has it: judged by its schema when it is saved. */
export type DraftBody = Omit<ReportBody, 'source' | 'proof'> & {
  source: SourceKind | ''
  proof: Record<string, unknown> | undefined
}

type About = {
  positionId: string
  furnaceId?: string
  /** The furnace's serial number: what a source means by “only this furnace”. */
  serial?: string
  requestId?: string
  position: PositionBody
  /** The id that the form's photo will have. */
  photoId?: string
}

/** An origin only tells reports apart; what is cut off is in the proof, whole. */
const longestOrigin = 120

/** The bodies to record: one for each value that the text states. */
export function reportBodies(
  form: ReportForm,
  values: readonly PressureText[],
  { positionId, furnaceId, serial, requestId, position, photoId }: About,
): DraftBody[] {
  const asked = proofAsked(form.source)
  const origin =
    asked === 'call'
      ? `call ${form.organisation} ${form.reference}`
      : asked === 'document' && form.documentName.trim() !== ''
        ? `${form.documentName} page ${form.documentPage} ${form.documentEdition}`
        : asked === 'part'
          ? `switch in hand ${furnaceId ?? form.readOffPart}`
          : takesPhoto(form)
            ? `photo ${form.photo.sha256}`
            : ''
  return values.map((value) => ({
    positionId,
    furnaceId,
    requestId,
    asWritten: form.asWritten,
    action: value.action ?? (form.action === '' ? 'not stated' : form.action),
    limit: value.limit ?? 'nominal',
    pascals: value.pascals,
    sense: value.sense !== 'not stated' ? value.sense : form.sense === '' ? 'not stated' : form.sense,
    toleranceAbove: value.toleranceAbove,
    toleranceBelow: value.toleranceBelow,
    unit: value.unit,
    decimals: value.decimals,
    kind: position.kind,
    between: form.between,
    tap: form.tap,
    stage: form.stage,
    source: form.source,
    readBack: asked === 'call' ? form.readBack === 'yes' : undefined,
    proof: proofOf(form, photoId),
    secondPersonId: asked === 'call' ? form.secondPersonId : undefined,
    origin: origin.trim().slice(0, longestOrigin),
    saidBy: asked === 'call' ? form.saidBy : undefined,
    saidOn: form.saidOn,
    readOffPart: asked === 'part' ? form.readOffPart : undefined,
    gaugeId: asked === 'gauge' ? form.gaugeId : undefined,
    partNumber: form.partNumber,
    ...coverage(form, serial),
    note: form.note,
  }))
}

/** Whether the form has a photo, and rests on something that can be photographed. */
export const takesPhoto = (form: ReportForm): form is ReportForm & { photo: TakenPhoto } =>
  form.photo !== null && canBePhotographed(form.source)

function proofOf(form: ReportForm, photoId: string | undefined): Record<string, unknown> | undefined {
  const asked = proofAsked(form.source)
  if (asked === 'call' && form.reference.trim() !== '') {
    return { kind: 'call reference', organisation: form.organisation, reference: form.reference }
  }
  if (asked === 'document' && form.documentName.trim() !== '') {
    return {
      kind: 'document',
      name: form.documentName,
      page: form.documentPage,
      edition: form.documentEdition === '' ? undefined : form.documentEdition,
    }
  }
  return takesPhoto(form) && photoId !== undefined ? { kind: 'photo', photoId } : undefined
}

/**
 * A range with no ends covers all; one left out is not stated, and covers only the furnace that the report was made
 * on. Only this furnace is a serial range that begins and ends with its own.
 */
function coverage(
  form: ReportForm,
  serial: string | undefined,
): Pick<ReportBody, 'revisionRange' | 'serialRange' | 'elevationBand'> {
  if (form.covers === 'this serial' && serial !== undefined)
    return { serialRange: { from: serial, to: serial } }
  if (form.covers !== 'as stated' && form.covers !== 'all') return {}
  const ends = (from: string, to: string) => ({
    ...(from.trim() === '' ? {} : { from: from.trim() }),
    ...(to.trim() === '' ? {} : { to: to.trim() }),
  })
  const elevation = (text: string, key: 'fromMetres' | 'toMetres') =>
    text.trim() === '' ? {} : { [key]: Math.round(metresOf(feet(text))) }
  const stated = form.covers === 'as stated'
  return {
    revisionRange: stated ? ends(form.revisionFrom, form.revisionTo) : {},
    serialRange: stated ? ends(form.serialFrom, form.serialTo) : {},
    elevationBand: stated
      ? { ...elevation(form.elevationFromFeet, 'fromMetres'), ...elevation(form.elevationToFeet, 'toMetres') }
      : {},
  }
}
