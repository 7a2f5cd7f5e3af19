import { readRatingText } from '@/lib/core/pressure'
import type { Action, Between, CodeRange, ElevationBand, SourceKind, Stage, Tap } from '@/lib/core/vocabulary'
import type { ReportBody } from '@/lib/records/kinds/report'
import type { PersonKey } from './people'

/** What a report covers: the furnace it was made on, everything, or what the source states. */
export type Covers =
  | 'this furnace'
  | 'all'
  | { revisions?: CodeRange; serials?: CodeRange; elevation?: ElevationBand }

/** A source's words, as one of the demo's people takes them down. The numbers are read out of the words. */
export type Report = {
  /** The position's key. */
  at: string
  by: PersonKey
  on: string
  says: string
  source: SourceKind
  covers: Covers
  /** What the person says of a single number whose words don't tell. */
  action?: Action
  sense?: ReportBody['sense']
  stage?: Stage
  between?: Between
  tap?: Tap
  proof?: ReportBody['proof']
  readBack?: boolean
  second?: PersonKey
  origin?: string
  saidBy?: string
  saidOn?: string
  /** The site label of the furnace it was made on. */
  furnace?: string
  readOffPart?: string
  partNumber?: string
  gaugeId?: string
  requestId?: string
  note?: string
}

type Read = Pick<
  ReportBody,
  'action' | 'limit' | 'pascals' | 'sense' | 'toleranceAbove' | 'toleranceBelow' | 'unit' | 'decimals'
>

/**
 * The numbers that a source's words state, read the way the program reads what people type.
 * @throws RangeError if the words can't be read
 */
export function readSays({ says, action, sense = 'not stated' }: Report): Read[] {
  const read = readRatingText(says)
  if (!read.ok) throw new RangeError(`The demo's “${says}” can't be read: ${read.problem.message}`)
  return read.value.map((value) => ({
    action: value.action ?? action ?? 'not stated',
    limit: value.limit ?? 'nominal',
    pascals: value.pascals,
    sense: value.sense === 'not stated' ? sense : value.sense,
    toleranceAbove: value.toleranceAbove,
    toleranceBelow: value.toleranceBelow,
    unit: value.unit,
    decimals: value.decimals,
  }))
}

/** A range with no ends covers all; one left out covers only the furnace that the report was made on. */
export function coverage(
  covers: Covers,
): Pick<ReportBody, 'revisionRange' | 'serialRange' | 'elevationBand'> {
  if (covers === 'this furnace') return {}
  const { revisions = {}, serials = {}, elevation = {} } = covers === 'all' ? {} : covers
  return { revisionRange: revisions, serialRange: serials, elevationBand: elevation }
}
