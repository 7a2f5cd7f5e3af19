export { wilsonInterval } from '../wilsonInterval'
export {
  type Catalogue,
  type Cause,
  type CauseStatus,
  type Chances,
  type Check,
  type Context,
  type ContextField,
  causeStatuses,
  type Finding,
  type NamedCause,
  notChecked,
  type Observations,
  type PastCase,
  unlistedCause,
} from './catalogue'
export { checkCatalogue } from './checkCatalogue'
export { entropyBits, expectedBits } from './entropy'
export type { Evidence } from './evidence'
export {
  brierScore,
  type Forecast,
  type HitRate,
  logLoss,
  type ReliabilityRow,
  reliabilityTable,
  type Scores,
  scoreForecasts,
  topHits,
} from './forecastScores'
export type { HelperRecord, ReplayedForecast } from './helperRecord'
export { type LikelihoodTable, learnedLikelihoods } from './learnedLikelihoods'
export { type PackedCases, packCases } from './packCases'
export { type RankedCause, rankCauses } from './rankCauses'
export { repairOrder } from './repairOrder'
export {
  defaultReplaySettings,
  type ReplaySettings,
  replayHelper,
  replayHelperInSteps,
} from './replayHelper'
export type { ReplayCase } from './replayTimeline'
export { defaultRankingSettings, type RankingSettings } from './settings'
export { type SimilarCase, similarCases } from './similarCases'
export { type Outcome, type PlannedCheck, suggestChecks } from './suggestChecks'
