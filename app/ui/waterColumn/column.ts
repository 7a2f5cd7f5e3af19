import type { PressureUnit } from '@/lib/core/pressure'
import type { Action, LimitKind, Sense } from '@/lib/core/vocabulary'
import type { DatedLevel } from '../words/LevelWord'

/** A rated point as the column draws it. Magnitudes in pascals. */
export type ColumnMark = {
  action: Action
  pascals: number
  toleranceAbove?: number
  toleranceBelow?: number
  limit: LimitKind
  standing: DatedLevel
  /** It is not on file: the level is the one that it would have once it is saved. */
  onceSaved?: boolean
}

/** What a water column shows, whether it is drawn or said in words. */
export type Column = {
  unit: PressureUnit
  /** The sense of the marks and of the reading. 'not stated' is drawn like suction and said to be unknown. */
  sense: Sense
  marks: readonly ColumnMark[]
  /** A magnitude in the column's sense; negative when the gauge showed the other sense. */
  reading?: { pascals: number; uncertaintyPascals: number }
  /** Readings taken before it. */
  earlier?: readonly { pascals: number }[]
}
