import { commonPractice } from '../provenance'
import { checksAtTheDoor } from './atTheDoor'
import { measuringChecks } from './measuring'
import { offTheFurnaceChecks } from './offTheFurnace'
import { quickLookChecks } from './quickLooks'
import { splittingChecks } from './splittingTheAirPath'
import type { CheckEntry, WorkStep, WrittenCheck } from './types'

export { type CheckEntry, workSteps } from './types'

const inStep = (step: WorkStep, written: Readonly<Record<string, WrittenCheck>>): CheckEntry[] =>
  Object.entries(written).map(([id, { source, ...check }]) => ({
    id,
    step,
    ...check,
    source: source ?? commonPractice,
  }))

/** Every check in the order of the work: dangers first, looks before meters, the switch by itself last. */
export const checks: readonly CheckEntry[] = [
  ...inStep('at the door', checksAtTheDoor),
  ...inStep('quick looks', quickLookChecks),
  ...inStep('measuring', measuringChecks),
  ...inStep('splitting the air path', splittingChecks),
  ...inStep('off the furnace', offTheFurnaceChecks),
]

const byId: ReadonlyMap<string, CheckEntry> = new Map(checks.map((check) => [check.id, check]))

/** A check of the catalogue by its id, as suggestChecks names it. */
export const checkById = (id: string): CheckEntry | undefined => byId.get(id)

/** Minutes of each check, by its id: what suggestChecks takes. */
export const checkMinutes: Readonly<Record<string, number>> = Object.fromEntries(
  checks.map(({ id, minutes }) => [id, minutes]),
)
