export { type AdviceCode, type AdviceState, adviceCodes, adviceText, whileLeftOff } from './advice'
export { isCalibrationPast } from './assumed'
export { combined, uncertaintyBudget } from './budget'
export { type ComparisonInput, compareReading } from './compareReading'
export { gaugeHalfWidth } from './instrumentUncertainty'
export { type LimitInterval, limitInterval } from './limitInterval'
export { closesWhen } from './phases'
export { probabilityAbove } from './probability'
export { usualReadingSettings } from './settings'
export type {
  Comparison,
  ContactState,
  Expected,
  Instrument,
  Judgement,
  Limit,
  OpenPoint,
  RatingForComparison,
  Reading,
  ReadingPhase,
  ReadingSettings,
  Steadiness,
  UncertaintyBudget,
  Verdict,
} from './types'
export { judgementWords, type VerdictWords, verdictWords } from './verdictWords'
