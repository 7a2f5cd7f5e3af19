import type { PressureText } from '../pressure'

/** A word as it was recognised in a picture. */
export type LabelWord = {
  text: string
  /** How sure the recognition is of it, 0 to 100, by its own reckoning: not a probability. */
  confidence: number
}

/** The words of one printed line, from left to right. */
export type LabelLine = readonly LabelWord[]

/** Something that a label seems to say, for a person to compare with it. Never taken for more. */
type Candidate = {
  /** Letter for letter as it was recognised, but for what `why` says was put right. A tap puts it into the field. */
  text: string
  /** That of its least sure word that matters, 0 to 100. */
  confidence: number
  /** Whether it is offered as likely; else it is shown with its reasons, and looked at twice. */
  offered: boolean
  /** Why it is taken for what it is, and what speaks against it; sentences. */
  why: readonly string[]
}

/** A rating: one pressure, or several that the label names. */
export type ValueCandidate = Candidate & { pressures: readonly PressureText[] }

/** The number of a part. */
export type PartCandidate = Candidate & {
  /** Numbers on file that are this one but for dashes, blanks and look-alikes. */
  onFile: readonly string[]
  /** Numbers on file that differ from it by a character or so: a misreading, or another part. */
  near: readonly string[]
}

export type LabelReading = {
  /** The likeliest first. */
  values: readonly ValueCandidate[]
  parts: readonly PartCandidate[]
}
