import { plainPartNumber } from '@/lib/core/rating'
import type { NewRecord } from '@/lib/device/device'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CallAttemptBody } from '@/lib/records/kinds/callAttempt'
import type { OrganisationBody } from '@/lib/records/kinds/organisation'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { Question } from '@/lib/records/view/desk/questions'
import { openTwin } from '@/lib/records/view/desk/questions'
import { partNamed } from '@/lib/records/view/partNamed'
import { freshReport, type ReportForm, readText, reportBodies } from '../report/reportForm'

/** One number of a call, as it is typed: what was said, the same typed blind, and whether it was read back. */
export type AnswerForm = {
  /** Tells the answers of one call apart. */
  key: string
  positionId: string
  report: ReportForm
  /** The value typed a second time, without seeing the first. */
  again: string
  readBack: boolean
  /** Where it is printed, as the other side says. */
  printedIn: string
  /** The part that the named part number replaces; empty for none. */
  replaces: string
  setting: 'same' | 'changed' | 'not stated' | ''
  kit: boolean
}

/** A call while it goes on. Plain words and texts, so that it is kept as a draft. */
export type CallForm = {
  /** A record’s id; `new` while an organisation is typed; empty until somebody says. */
  organisationId: string
  newName: string
  newSource: OrganisationBody['source'] | ''
  number: string
  person: string
  reference: string
  /** The first requests of the questions that this call is about. */
  taken: string[]
  answers: AnswerForm[]
  outcome: CallAttemptBody['outcome'] | ''
  /** Local date and time, as the browser’s own field writes it. */
  ringBackAt: string
  offered: string
  note: string
}

/** Letters enough to tell apart the numbers of one call. */
export const freshAnswer = (position: Entry<PositionBody>, key: string): AnswerForm => ({
  key,
  positionId: position.id,
  report: freshReport(position.body),
  again: '',
  readBack: false,
  printedIn: '',
  replaces: '',
  setting: '',
  kit: false,
})

/** A call about some questions, with one number asked for each whose switch is on file. */
export const freshCall = (questions: readonly Question[], organisationId: string): CallForm => ({
  organisationId,
  newName: '',
  newSource: '',
  number: '',
  person: '',
  reference: '',
  taken: questions.map(({ lead }) => lead.id),
  answers: questions.flatMap(({ position }, index) =>
    position === undefined ? [] : [freshAnswer(position, `${index + 1}`)],
  ),
  outcome: '',
  ringBackAt: '',
  offered: '',
  note: '',
})

/** Whom the call reaches, as far as it is said. */
export type Rung = { name: string; source: OrganisationBody['source'] | '' }

export function rungIn(file: TeamFile, form: CallForm): Rung {
  const onFile = file.organisations.get(form.organisationId)?.body
  return onFile ?? { name: form.newName.trim(), source: form.newSource }
}

/** The answer as a report form: what belongs to the call is the same for all of its answers. */
export function asReport(answer: AnswerForm, form: CallForm, rung: Rung): ReportForm {
  const note = [answer.report.note, answer.printedIn.trim() && `Printed in: ${answer.printedIn.trim()}`]
  return {
    ...answer.report,
    source: rung.source,
    organisation: rung.name,
    reference: form.reference.trim(),
    saidBy: form.person.trim(),
    readBack: answer.readBack ? 'yes' : 'no',
    note: note.filter(Boolean).join('\n'),
  }
}

/** Whether the value was typed twice and is the same number both times, unit and tolerance included where stated. */
export function agreesTwice({ report, again }: Pick<AnswerForm, 'report' | 'again'>): boolean {
  const first = readText(report)
  if (!first.ok) return false
  const second = readText({ ...report, asWritten: again, unit: first.value[0]?.unit ?? report.unit })
  return (
    second.ok &&
    second.value.length === first.value.length &&
    second.value.every((value, index) => {
      const other = first.value[index]!
      const isSame = (one: number | undefined, two: number | undefined) =>
        one === undefined || (two !== undefined && Math.abs(one - two) < 1e-9)
      return (
        Math.abs(value.pascals - other.pascals) < 1e-9 &&
        isSame(value.toleranceAbove, other.toleranceAbove) &&
        isSame(value.toleranceBelow, other.toleranceBelow)
      )
    })
  )
}

/** Whether anything was typed of an answer that makes it one. */
export const isTyped = (answer: AnswerForm): boolean => answer.report.asWritten.trim() !== ''

/** Words with which a seller offers what the maker does not name. */
const offeredWords = /\b(universal|adjustable|generic|general[ -]purpose)\b/i

/** Whether what was typed names a general-purpose or adjustable switch, by its words or by its part on file. */
export function isGeneralPurpose(file: TeamFile, { report }: AnswerForm): boolean {
  const part = partNamed(file, report.partNumber)?.body
  return (
    part?.class === 'general-purpose' ||
    part?.fieldAdjustable === true ||
    [report.asWritten, report.partNumber, report.note].some((text) => offeredWords.test(text))
  )
}

/** A local date and time with the offset of this device: `2026-02-08T13:10` → `2026-02-08T13:10:00-05:00`. */
export function withOffset(local: string): string {
  const minutes = -new Date(local).getTimezoneOffset()
  if (Number.isNaN(minutes)) return local
  const two = (count: number) => String(Math.trunc(Math.abs(count))).padStart(2, '0')
  return `${local}:00${minutes < 0 ? '-' : '+'}${two(minutes / 60)}:${two(minutes % 60)}`
}

/** The question that an answer for a switch answers: one of those taken into the call, else another open one. */
export function answeredBy(
  file: TeamFile,
  taken: readonly Question[],
  positionId: string,
): Question | undefined {
  return taken.find(({ position }) => position?.id === positionId) ?? openTwin(file, { positionId })
}

/**
 * Everything that a call adds to the log, in one step: the organisation if it is new, the parts and what they
 * replace, the reports, and the call itself.
 * @param newId makes the ids by which the records of one step name each other
 */
export function callRecords(
  file: TeamFile,
  form: CallForm,
  taken: readonly Question[],
  newId: () => string,
): NewRecord[] {
  const rung = rungIn(file, form)
  const isNew = !file.organisations.has(form.organisationId)
  const organisationId = isNew ? newId() : form.organisationId
  const makerIds = [...new Set(taken.flatMap(({ maker }) => maker?.id ?? []))]
  const typed = form.answers.filter(isTyped)
  const partIds = new Map<string, string>()
  const statedIn = `Call ${rung.name}${form.reference.trim() === '' ? '' : `, ref. ${form.reference.trim()}`}`
  const superseding = typed.flatMap((answer): NewRecord[] => {
    if (answer.replaces === '' || answer.report.partNumber.trim() === '') return []
    const plain = plainPartNumber(answer.report.partNumber)
    const onFile = partIds.get(plain) ?? partNamed(file, answer.report.partNumber)?.id
    const newPartId = onFile ?? newId()
    partIds.set(plain, newPartId)
    const old = file.parts.get(file.keptId(answer.replaces))?.body
    return [
      ...(onFile === undefined
        ? [
            {
              kind: 'part',
              id: newPartId,
              body: {
                partNumber: answer.report.partNumber.trim(),
                class: 'factory',
                fieldAdjustable: false,
                makerId: old?.makerId,
                positionIds: [answer.positionId],
                listedIn: statedIn.slice(0, 200),
              },
            },
          ]
        : []),
      {
        kind: 'supersession',
        body: {
          oldPartId: answer.replaces,
          newPartId,
          setting: answer.setting === '' ? 'not stated' : answer.setting,
          kit: answer.kit,
          statedIn: statedIn.slice(0, 200),
        },
      },
    ]
  })
  const answered = new Set<string>()
  const reports = typed.flatMap((answer): NewRecord[] => {
    const position = file.positions.get(answer.positionId)
    const report = asReport(answer, form, rung)
    const read = readText(report)
    if (position === undefined || !read.ok) return []
    const question = answeredBy(file, taken, answer.positionId)
    const furnace = (question ?? taken[0])?.furnaces[0]
    if (question !== undefined) answered.add(question.lead.id)
    return reportBodies(report, read.value, {
      positionId: position.id,
      furnaceId: furnace?.id,
      serial: furnace?.body.serial,
      requestId: question?.lead.id,
      position: position.body,
    }).map((body) => ({ kind: 'report', body }))
  })
  return [
    ...(isNew
      ? [
          {
            kind: 'organisation',
            id: organisationId,
            body: { name: rung.name, source: rung.source, makerIds, number: form.number.trim() },
          },
        ]
      : []),
    ...superseding,
    ...reports,
    {
      kind: 'call attempt',
      body: {
        organisationId,
        requestIds: [...new Set([...form.taken, ...answered])],
        number: isNew ? undefined : form.number.trim(),
        outcome: form.outcome,
        ringBackAt:
          form.outcome === 'ring back' && form.ringBackAt !== '' ? withOffset(form.ringBackAt) : undefined,
        person: form.person.trim(),
        reference: form.reference.trim(),
        offered: form.outcome === 'offered a general-purpose part' ? form.offered.trim() : undefined,
        note: form.note.trim(),
      },
    },
  ]
}
