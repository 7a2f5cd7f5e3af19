import type { Action, LimitKind, Sense } from '../vocabulary'
import type { PressureUnit } from './units'

/** Something to look at again before the value is kept. It never stops anybody. */
export type Warning = {
  /** Stable, machine-readable, kebab-case. */
  code: string
  /** A sentence for the person who typed: what is odd, and what it may have been meant to be. */
  message: string
}

/** A pressure as a person typed it or a label prints it. */
export type PressureText = {
  /** Magnitude in pascals, never negative: −0.85 is more suction than −0.70. */
  pascals: number
  /** From a sign or a plain word ('suction', 'negative', 'positive'); 'not stated' without either, and for zero. */
  sense: Sense
  /** Magnitude as written, in `unit`. */
  value: number
  unit: PressureUnit
  /** False when a bare number was read in the person's own unit: ask. */
  unitStated: boolean
  /** Decimals as written; those that state a ruler fraction exactly (1/2 has one, 3/8 has three). */
  decimals: number
  /** Only from a plain word (close, make, open, break); left out when the text doesn't say. */
  action?: Exclude<Action, 'not stated'>
  /** 'nominal' when the text says so or gives a tolerance; left out when the text doesn't say. */
  limit?: LimitKind
  /** Pascals, never negative: how much greater than `pascals` the magnitude may be. */
  toleranceAbove?: number
  /** Pascals, never negative: how much smaller than `pascals` the magnitude may be. */
  toleranceBelow?: number
  warnings: Warning[]
  /** The whole text, letter for letter. */
  asWritten: string
}

export type ReadPressureOptions = {
  /** The unit of a number that states none. Default 'inH2O'. */
  ownUnit?: PressureUnit
  /**
   * A rating can't be zero and asks for confirmation when its size is odd; a reading is what the gauge showed,
   * zero included. Default 'rating'.
   */
  as?: 'rating' | 'reading'
}
