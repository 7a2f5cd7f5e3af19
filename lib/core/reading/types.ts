import type { Between, Level, LimitKind, Sense, Stage, SwitchKind, Tap } from '@/lib/core/vocabulary'
import type { AdviceCode } from './advice'

/** When in the furnace's run it was read. The first two after rest are cold, the last two hot. */
export type ReadingPhase = 'rest' | 'pre-purge' | 'at make' | 'after light-off' | 'steady hot'

/** The contact at the very moment of the reading. */
export type ContactState = 'open' | 'closed' | 'not read'

/**
 * Samples from one manometer at one place in one state. All pressures are magnitudes in pascals, zero or more;
 * the direction is in `sense`.
 */
export type Reading = {
  samples: readonly number[]
  /** What the gauge's minimum and maximum hold showed, in pascals. */
  lowest?: number
  highest?: number
  sense: Sense
  kind: SwitchKind
  between: Between
  tap: Tap
  stage: Stage
  door: 'on' | 'off'
  /** How long the display was watched, in seconds. */
  secondsWatched?: number
  /** The display averages, so that it hides the lowest and the highest moment. */
  averaging?: boolean
  /** Each sample is from its own start; samples of one run are no independent repeats. */
  separateStarts?: boolean
  phase: ReadingPhase
  contacts: ContactState
}

/** How far a manometer can be trusted, as its maker prints it. */
export type Instrument = {
  /** ± this many per cent of what it shows. */
  percentOfReading?: number
  /** ± this many steps of its last digit. */
  counts?: number
  /** ± this many per cent of its span. */
  percentOfSpan?: number
  spanPascals: number
  resolutionPascals: number
  /** Whether the parts of the accuracy form add up, or the greatest of them counts. */
  combine: 'plus' | 'greater'
  /** Zeroed with both ports open to the room before this reading. */
  zeroed: boolean
  /** The last day of its calibration, YYYY-MM-DD. */
  calibrationDue?: string
}

/** One rated value with its promise and its standing. Pressures are magnitudes in pascals. */
export type Limit = {
  pascals: number
  toleranceAbove?: number
  toleranceBelow?: number
  kind: LimitKind
  standing: Level
  /** With the standing 'In dispute': every value that is still possible. */
  candidates?: readonly Limit[]
}

/** What is on file for one switch position, with whatever the sources left open as 'not stated'. */
export type RatingForComparison = {
  closes?: Limit
  opens?: Limit
  /** A number whose action nobody stated. It is used only when neither of the others is on file. */
  unstated?: Limit
  kind: SwitchKind
  between: Between
  tap: Tap
  stage: Stage
  sense: Sense
}

/** What this furnace should show in this phase and stage. */
export type Expected =
  | { kind: 'baselines'; pascals: readonly number[] }
  | { kind: 'range'; lowPascals: number; highPascals: number; source: string }

export type ReadingSettings = {
  /** The moment of the comparison, ISO 8601 or milliseconds since 1970; decides whether a calibration has run out. */
  now: string | number
  /** Half-width taken for a nominal value whose tolerance nobody stated. */
  assumedTolerancePascals: number
  /** s₀: how far repeats of one reading usually scatter, as a standard deviation. */
  usualScatterPascals: number
  /** More than this to either side of the middle is flutter. */
  flutterHalfSpreadPascals: number
  /** A hot reading that holds by less is thin: the maker's figure where there is one. */
  thinGuideline: { pascals: number; source: string }
  /** At rest a zeroed gauge shows no more than this. */
  restZeroLimitPascals: number
  /** How long a reading must be watched before it is called steady, in seconds. */
  steadySeconds: number
  /** The share by which weather alone may lift a healthy furnace above its own baselines. */
  weatherShare: number
  /** More separate starts than this are never asked for. */
  mostStarts: number
}

export type Verdict = 'too low' | 'enough' | 'too close to call'

/** Standard uncertainties in pascals, one per source. */
export type UncertaintyBudget = {
  instrument: number
  resolution: number
  repeatability: number
  tolerance: number
}

/** One reading held against one limit. */
export type Judgement = {
  limit: Limit
  /** The action that happens at the limit. */
  against: 'closes' | 'opens' | 'not stated'
  /** About the magnitude: 'enough' reaches the limit, whether the switch then closes or opens. */
  verdict: Verdict
  /** Holds closed, but by less than the guideline: no proof of a repair. */
  thin: boolean
  guideline?: { pascals: number; source: string }
  meanPascals: number
  /** The value held against the limit: the mean when cold; hot, the extreme that endangers the contact. */
  judgedPascals: number
  /** judgedPascals minus the limit's value. */
  marginPascals: number
  /** The probability that the magnitude reaches the limit; where only a maximum is known, at least this. */
  probabilityEnough: number
  standardUncertaintyPascals: number
  /** U: half-width of the gauge's accuracy at this reading. */
  gaugeHalfWidthPascals: number
  budget: UncertaintyBudget
  /** The switch is closed even if gauge and tolerance are both as wrong as they may be. */
  clearsWorstCase: boolean
  /** What could settle 'too close to call': so many further separate starts, or a better gauge. */
  moreSamples?: number | 'a finer manometer is needed'
  /** How many values in dispute share this verdict; the figures are those of the closest of them. */
  sharedBy?: number
}

export type Steadiness = 'steady' | 'fluttering' | 'not watched long enough'

/** A point that the rating leaves open, so that the reading's own was taken. */
export type OpenPoint = 'between' | 'tap' | 'stage' | 'sense'

export type Comparison = {
  kind: SwitchKind
  phase: ReadingPhase
  contacts: ContactState
  /** Will it start? For a switch that opens on rise: will it open while cold? */
  start?: Judgement
  /** Will it stay on? */
  run?: Judgement
  /** The standing of the limit that was judged; none was judged at rest. */
  standing?: Level
  /** Absent when there is neither a baseline nor a reported range to tell by. */
  higherThanExpected?: boolean
  flutter: boolean
  steady: Steadiness
  /** Hot, holds closed, not thin, not higher than expected, no flutter. */
  goodMargin: boolean
  openPoints: OpenPoint[]
  /** Everything that was taken for granted, as sentences. */
  assumed: string[]
  /** What to do, in order. */
  advice: AdviceCode[]
}
