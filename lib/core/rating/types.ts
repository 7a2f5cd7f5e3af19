import type { PressureUnit } from '@/lib/core/pressure'
import type {
  Action,
  Between,
  CodeRange,
  ElevationBand,
  Level,
  LimitKind,
  Sense,
  SourceKind,
  Stage,
  SwitchKind,
  Tap,
} from '@/lib/core/vocabulary'

/** What lets somebody else check a report: a picture, a page, or a call that the other side can find again. */
export type Proof = 'photo' | 'document' | 'call reference'

/** One person's record of what one source says about one rating. Pressures are pascals. */
export type RatingReport = {
  id: string
  /** The switch position that the rating belongs to. Never carried over to another. */
  positionKey: string
  action: Action
  limit: LimitKind
  /** Magnitude, never negative; its direction is `sense`. */
  pascals: number
  sense: Sense
  /** How far above and below the number the switch may work, pascals. Left out where the source gives none. */
  toleranceAbove?: number
  toleranceBelow?: number
  /** Decimals and unit as the source states them: the fineness of the number. */
  decimals: number
  unit: PressureUnit
  /** Letter for letter. */
  asWritten: string
  kind: SwitchKind
  between: Between
  tap: Tap
  stage: Stage
  source: SourceKind
  /** The number was read back digit by digit and confirmed by the source. */
  readBack?: boolean
  proof?: Proof
  /** A second person read the same photo, or listened to the same call. */
  secondPerson?: boolean
  /** Reports of one origin (a call, a document page, a photo, a switch in hand) count once. */
  origin?: string
  /** What names the picture that it was read off. Whatever was read off one picture is of one origin. */
  photo?: string
  /** The day or moment the source said it, ISO 8601. */
  saidAt: string
  saidBy: string
  /** The part number that the source names. */
  partNumber?: string
  /** Ranges that the source states; one with no ends covers all. One left out covers only the furnace `furnaceId`. */
  revisionRange?: CodeRange
  serialRange?: CodeRange
  elevationBand?: ElevationBand
  /** The furnace that the report was made on. */
  furnaceId?: string
  /** What the switch is that the number was read off. A general-purpose one is no evidence of a furnace's rating. */
  partClass?: 'factory' | 'general-purpose' | 'not known'
  /** Of a bench check: what the gauge itself may be off by, pascals. */
  gaugeUncertaintyPascals?: number
}

/** Beta counts of a source: its reliability is right / (right + wrong). */
export type ReliabilityCounts = { right: number; wrong: number }

/** A source together with what its start reliability depends on. */
export type ReliabilityKey =
  | 'factory switch label, with photo'
  | 'factory switch label, without photo'
  | 'data plate'
  | 'current literature'
  | 'older literature'
  | 'factory support, read back'
  | 'factory support, not read back'
  | 'distributor, read back'
  | 'distributor, not read back'
  | 'bench check'
  | 'unknown switch label'
  | 'parts listing'
  | 'remembered'
  | 'imported'

/**
 * New evidence that ends a dispute: factory support with a reference, or the maker's current page. It holds only
 * while that report stands; the overruled ones stay readable.
 */
export type SettledDispute = {
  evidenceReportId: string
  overruledReportIds: readonly string[]
  reason?: string
}

export type RatingSettings = {
  /** The time, ISO 8601 or milliseconds since 1970. */
  now: string | number
  /** How many values a label could plausibly bear. Default 40 (common practice, no published source). */
  plausibleValues?: number
  /** Age at which a call alone is no longer enough proof. Default 24 (common practice, no published source). */
  staleAfterMonths?: number
  /** Counts that the team has learned, in place of the start counts. */
  reliability?: Readonly<Partial<Record<ReliabilityKey, ReliabilityCounts>>>
  /** Part numbers that a later one replaces. */
  supersededPartNumbers?: readonly string[] | ((partNumber: string) => boolean)
  settledDisputes?: readonly SettledDispute[]
  /**
   * How the maker orders two serial or revision codes: negative, zero, positive, or undefined when they cannot be
   * compared. Default: runs of digits as numbers, runs of letters as letters.
   */
  compareCodes?: (first: string, second: string) => number | undefined
}

/** What is known of the furnace that a rating is wanted for. What is left out is not known. */
export type FurnaceForRating = {
  id?: string
  revision?: string
  serial?: string
  elevationMetres?: number
  /** The factory part number of the switch at this position. */
  partNumber?: string
}

/** What non-leads report for the other action and for the sister switch, pascals. */
export type KnownValues = { otherAction: readonly number[]; sister: readonly number[] }

/** A slip that would turn the likeliest value into another reported one. */
export type Slip =
  | 'ten times'
  | 'a tenth'
  | 'break taken for make'
  | 'make taken for break'
  | 'sister switch taken for this one'
  | 'number read in another unit'

/** Two ratings of one furnace that stand the other way round than usual, so that one may have been taken for the other. */
export type Disorder = 'break beyond make' | 'low fire beyond high fire'

type Stated = { pascals: number; limit: LimitKind; toleranceAbove?: number; toleranceBelow?: number }

/** Another reported value, with its own probability. */
export type Rival = Stated & {
  probability: number
  reportIds: string[]
  sources: SourceKind[]
  slip?: Slip
  /** Whether this rival by itself puts the rating in dispute. */
  disputes: boolean
}

/** A report that is listed beside the rating and lends it no weight. */
export type Lead = {
  reportId: string
  source: SourceKind
  pascals: number
  limit: LimitKind
  saidAt: string
  /** Whether it names the value shown. */
  agrees: boolean
  /** What is not known of the furnace and might say that it is for another. */
  asks: readonly Ask[]
  /** Why it is no more than a lead: a sentence. */
  why: string
}

/** A source that agrees with the value shown, and its date. */
type AgreeingSource = { reportId: string; source: SourceKind; saidAt: string; proof?: Proof }

type StandingParts = {
  sense: Sense
  kind?: SwitchKind
  between: Between
  tap: Tap
  stage: Stage
  /** Of the value shown; 0 when there is none. */
  probability: number
  rivals: Rival[]
  leads: Lead[]
  /** Why the level is what it is, and what would raise it: sentences for the person who must act. */
  reasons: string[]
  /** The reports that agree with the value shown. */
  reportIds: string[]
  sources: AgreeingSource[]
  likelySlip?: Slip
  /** How the value shown stands to that of the other action or the sister switch; left out where the order is usual. */
  outOfOrder?: Disorder[]
}

/** How far a rating can be trusted. A value is there exactly when the level is not 'Not on file'. */
export type RatingStanding =
  | (StandingParts & Stated & { level: Exclude<Level, 'Not on file'> })
  | (StandingParts & {
      level: 'Not on file'
      pascals?: undefined
      limit?: undefined
      toleranceAbove?: undefined
      toleranceBelow?: undefined
    })

/** What to ask about the furnace, because the answer depends on it. */
export type Ask = 'elevation' | 'revision' | 'serial' | 'part number'

export type FurnaceRating = {
  closes: RatingStanding
  opens: RatingStanding
  /** Reports that do not say whether the switch closes or opens at the number. */
  unstated: RatingStanding
  asks: Ask[]
}
