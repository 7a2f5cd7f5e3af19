import { type PositionTemplate, positionTemplates } from '@/lib/catalogue/positions'
import { switchKindEntries } from '@/lib/catalogue/switchKinds'
import type { Between, Sense, Stage, SwitchKind, Tap } from '@/lib/core/vocabulary'
import type { FormAnswer } from './form/useRecordForm'

export type PositionForm = {
  rangeId: string
  rangeTyped: string
  /** The usual position that the form was filled from; empty before one is chosen. */
  template: string
  name: string
  stage: Stage | ''
  kind: SwitchKind | ''
  between: Between | ''
  tap: Tap | ''
  sense: Sense | ''
  sisterId: string
  note: string
  twin: string
}

export const freshPosition = (rangeId: string, name = ''): PositionForm => ({
  rangeId,
  rangeTyped: '',
  template: '',
  name,
  stage: '',
  kind: '',
  between: '',
  tap: '',
  sense: '',
  sisterId: '',
  note: '',
  twin: '',
})

/** The answer of the question about usual positions that fills nothing in. */
export const noTemplate = 'another'

/** What a usual position fills in. Each of it is a proposal to check on the furnace. */
export function filledFrom(name: string): Partial<PositionForm> {
  const template: PositionTemplate | undefined = positionTemplates.find((each) => each.name === name)
  if (template === undefined) return { template: name }
  const { usualBetween, usualSense } = switchKindEntries[template.kind]
  const { stage, kind, tap } = template
  return { template: name, name, stage, kind, tap, between: usualBetween, sense: usualSense }
}

const asked = {
  name: 'Type what the position is called, for instance Low fire.',
  stage: 'Choose the stage, or “not stated”.',
  kind: 'Choose the kind of switch.',
  between: 'Choose between which points its pressure acts, or “points not stated”.',
  tap: 'Choose where its hose ends, or “tap not stated”.',
  sense: 'Choose suction or positive pressure, or “not stated”.',
} as const

/** What the form of a switch position amounts to. Nothing that was left open is filled in. */
export function readPositionForm(form: PositionForm): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.rangeId === '') gaps.rangeId = 'Choose the furnace range that the switch belongs to.'
  for (const field of ['name', 'stage', 'kind', 'between', 'tap', 'sense'] as const) {
    if (form[field].trim() === '') gaps[field] = asked[field]
  }
  if (Object.keys(gaps).length > 0) return { gaps }
  const { rangeId, name, stage, kind, between, tap, sense, sisterId, note } = form
  return { body: { rangeId, name, stage, kind, between, tap, sense, sisterId, note } }
}
