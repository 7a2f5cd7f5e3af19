/**
 * The words that a rating and a reading share. A rating is a bundle, not a number: whichever of these a source
 * leaves open is kept as 'not stated' and never filled in.
 */

/** What the contact does when the magnitude reaches the number: makes, or breaks. */
export type Action = 'closes' | 'opens' | 'not stated'

/** Which side of the number is promised. 'nominal' has a tolerance; 'maximum' and 'minimum' are one-sided. */
export type LimitKind = 'nominal' | 'maximum' | 'minimum'

/** Suction is below the reference pressure, pressure above it. Magnitudes are always kept positive. */
export type Sense = 'suction' | 'pressure' | 'not stated'

export type SwitchKind = 'one-port' | 'two-port' | 'opens on rise' | 'gas pressure' | 'sensor'

/** The two places between which the pressure acts on the switch. */
export type Between = 'port and room' | 'port and cabinet' | 'two ports' | 'not stated'

/** Where in the furnace the port's hose ends. */
export type Tap = 'inducer inlet' | 'collector box' | 'burner box' | 'vent side' | 'not stated'

export type Stage = 'single stage' | 'low fire' | 'middle fire' | 'high fire' | 'not stated'

export const actions = ['closes', 'opens', 'not stated'] as const satisfies readonly Action[]
export const limitKinds = ['nominal', 'maximum', 'minimum'] as const satisfies readonly LimitKind[]
export const senses = ['suction', 'pressure', 'not stated'] as const satisfies readonly Sense[]
export const switchKinds = [
  'one-port',
  'two-port',
  'opens on rise',
  'gas pressure',
  'sensor',
] as const satisfies readonly SwitchKind[]
export const betweens = [
  'port and room',
  'port and cabinet',
  'two ports',
  'not stated',
] as const satisfies readonly Between[]
export const taps = [
  'inducer inlet',
  'collector box',
  'burner box',
  'vent side',
  'not stated',
] as const satisfies readonly Tap[]
export const stages = [
  'single stage',
  'low fire',
  'middle fire',
  'high fire',
  'not stated',
] as const satisfies readonly Stage[]

/** Metres above sea level, both ends included; an end left out is open. */
export type ElevationBand = { fromMetres?: number; toMetres?: number }

/** A revision or serial range as printed, both ends included, compared as the maker orders them; open if left out. */
export type CodeRange = { from?: string; to?: string }

/** How far a value of a rating can be trusted. See lib/core/rating. */
export type Level = 'Verified' | 'Supported' | 'Unverified' | 'In dispute' | 'Not on file'

/** Who or what a report of a rating rests on. Start reliabilities: lib/core/rating. */
export type SourceKind =
  | 'factory switch label'
  | 'unknown switch label'
  | 'data plate'
  | 'current literature'
  | 'older literature'
  | 'factory support'
  | 'distributor'
  | 'parts listing'
  | 'bench check'
  | 'remembered'
  | 'imported'

export const sourceKinds = [
  'factory switch label',
  'unknown switch label',
  'data plate',
  'current literature',
  'older literature',
  'factory support',
  'distributor',
  'parts listing',
  'bench check',
  'remembered',
  'imported',
] as const satisfies readonly SourceKind[]
