/**
 * The vocabulary that a diagnosis works on: causes, findings and checks of any trade, as data.
 * Nothing in this folder knows what a cause or a finding means.
 */

/** Something observed or ruled out. Two-valued (`seen`, `ruled out`) or many-valued; it has one value at a time. */
export type Finding = {
  id: string
  /** At least two, all different. 'not checked' is no value: it is what a finding without one is called. */
  values: readonly string[]
  /** 'context only': it tells no cause from another, so it is shown and never weighed. Otherwise 'evidence'. */
  carries?: 'evidence' | 'context only'
  /** Chance of each value under a cause that says nothing about this finding. Equal chances if left out. */
  usual?: Chances
  /** How many times the setting `findingStrength` the trade's chances for this finding are worth. 1 if left out. */
  strength?: number
}

/** A chance for every value of one finding, each above 0 and below 1, together 1. */
export type Chances = Readonly<Record<string, number>>

export type Cause = {
  id: string
  /** The trade's base rate, above 0. Only the proportions between causes count. */
  prior: number
  /** What each finding looks like under this cause, by finding id. */
  likelihoods?: Readonly<Record<string, Chances>>
  /** A cause that must stay in sight however rare it is. */
  danger?: boolean
}

/** Something that can be done to learn the values of one or more findings. */
export type Check = {
  id: string
  /** Ids of the findings that it settles. */
  reveals: readonly string[]
  by: 'look' | 'tool' | 'taking apart'
  danger?: boolean
}

/**
 * Something known about where a case happened (the same furnace, model range, fuel). Two cases that differ in it
 * are further apart by `weight`, by half of it where either does not state it.
 */
export type ContextField = { id: string; weight: number }

export type Catalogue = {
  causes: readonly Cause[]
  findings: readonly Finding[]
  checks?: readonly Check[]
  context?: readonly ContextField[]
  /** Ids of causes in the order in which they are looked for when nobody thinks; the order of `causes` if left out. */
  checklist?: readonly string[]
}

/** The value of a finding that nobody looked at. It is left out of every sum and never read as 'ruled out'. */
export const notChecked = 'not checked'

/** The name under which a ranking lists whatever the catalogue does not. */
export const unlistedCause = 'not on the list'

/** Values by finding id. A finding that is absent, or 'not checked', has not been looked at. */
export type Observations = Readonly<Record<string, string>>

/** What is stated about where a case happened, by context field. Fields the catalogue does not name are ignored. */
export type Context = Readonly<Record<string, string>>

/** Presumed: repaired, nothing measured. Confirmed: after-readings. Durable: and quiet for the team's period. */
export type CauseStatus = 'presumed' | 'confirmed' | 'durable'

export const causeStatuses = ['presumed', 'confirmed', 'durable'] as const satisfies readonly CauseStatus[]

export type NamedCause = { main: string; contributing?: string; status: CauseStatus }

export type PastCase = {
  id: string
  findings: Observations
  context?: Context
  /** Left out while nobody knows. A main cause that the catalogue does not list teaches nothing about those it does. */
  cause?: NamedCause
}
