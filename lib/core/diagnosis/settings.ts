import type { CauseStatus } from './catalogue'

export type RankingSettings = {
  /** k: the nearest cases set how far the ranking looks. Infinity: every case counts alike (plain naive Bayes). */
  neighbours: number
  /** A: how many cases the trade's base rates are worth. Above 0. */
  priorStrength: number
  /** m: how many cases the trade's chances for a finding are worth. Above 0. */
  findingStrength: number
  /** Chance, before any finding, that the cause is not on the list. From 0 to below 1. */
  unlistedPrior: number
  /** What a case counts by how well its cause is known, 0 or more. */
  statusWeights: Readonly<Record<CauseStatus, number>>
  /** The part of a case that counts for its contributing cause, from 0 to below 1; the rest is the main cause's. */
  contributingShare: number
  /** Repetitions of the bootstrap behind interval90, a whole number. 0: no interval is worked out. */
  replicates: number
  /** Start of the bootstrap's random numbers. */
  seed: number
  /** How many similar cases are shown with each cause. */
  similarPerCause: number
}

/**
 * k = 50 is the size for which Frank, Hall & Pfahringer (UAI 2003) report results (from memory). The strengths,
 * shares and the chance of an unlisted cause are common practice, no published source; replaying a team's own
 * cases (replayHelper) replaces the first three.
 */
export const defaultRankingSettings: RankingSettings = {
  neighbours: 50,
  priorStrength: 20,
  findingStrength: 4,
  unlistedPrior: 0.05,
  statusWeights: { presumed: 0.5, confirmed: 1, durable: 1 },
  contributingShare: 0.3,
  replicates: 200,
  seed: 1,
  similarPerCause: 3,
}

/** Fills in the defaults. Throws RangeError when a setting is outside its range. */
export function completeSettings(given: Partial<RankingSettings> = {}): RankingSettings {
  const settings = { ...defaultRankingSettings, ...given }
  const wrong = (rule: string) => new RangeError(`Ranking settings: ${rule}`)
  if (!(settings.neighbours >= 1)) throw wrong('neighbours must be 1 or more')
  if (!(settings.priorStrength > 0 && settings.priorStrength < Infinity)) {
    throw wrong('priorStrength must be above 0')
  }
  if (!(settings.findingStrength > 0 && settings.findingStrength < Infinity)) {
    throw wrong('findingStrength must be above 0')
  }
  if (!(settings.unlistedPrior >= 0 && settings.unlistedPrior < 1)) {
    throw wrong('unlistedPrior must be from 0 to below 1')
  }
  for (const weight of Object.values(settings.statusWeights)) {
    if (!(weight >= 0 && weight < Infinity)) throw wrong('statusWeights must be 0 or more')
  }
  if (!(settings.contributingShare >= 0 && settings.contributingShare < 1)) {
    throw wrong('contributingShare must be from 0 to below 1')
  }
  for (const name of ['replicates', 'similarPerCause'] as const) {
    if (!Number.isInteger(settings[name]) || settings[name] < 0) throw wrong(`${name} must be a whole number`)
  }
  if (!Number.isInteger(settings.seed)) throw wrong('seed must be a whole number')
  return settings
}
