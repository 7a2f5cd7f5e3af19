import { type PressureUnit, readPressureText, unitLabel } from '@/lib/core/pressure'
import type { ContactState, Reading, ReadingPhase } from '@/lib/core/reading'
import type { Between, Sense, Stage, Tap } from '@/lib/core/vocabulary'
import type { PositionBody } from '@/lib/records/kinds/position'

/** What the technician has typed and chosen so far; kept as a draft, so all of it is plain text and words. */
export type ReadingForm = {
  unit: PressureUnit
  /** What is being typed now. */
  typed: string
  /** The starts that were entered before it, each with the unit that it was typed in. */
  starts: { key: number; text: string }[]
  lowest: string
  highest: string
  watched: string
  gaugeId: string
  zeroed: boolean
  /** An unusual size was looked at again, and stands. */
  lookedAgain: boolean
  averaging: boolean
  phase: ReadingPhase | ''
  contacts: ContactState | ''
  stage: Stage
  between: Between
  tap: Tap
  sense: Sense
  door: 'on' | 'off'
}

/** Starts from what the position says, so that only what differs has to be touched. */
export const freshForm = (position: PositionBody, unit: PressureUnit, gaugeId: string): ReadingForm => ({
  unit,
  typed: '',
  starts: [],
  lowest: '',
  highest: '',
  watched: '',
  gaugeId,
  zeroed: false,
  lookedAgain: false,
  averaging: false,
  phase: '',
  contacts: '',
  stage: position.stage,
  between: position.between,
  tap: position.tap,
  sense: position.sense,
  door: 'on',
})

/** Keeps what was typed as one start, with its unit, so that a later change of unit leaves it as it was. */
export const keepStart = (form: ReadingForm): Partial<ReadingForm> => ({
  starts: [
    ...form.starts,
    { key: (form.starts.at(-1)?.key ?? 0) + 1, text: withUnit(form.typed, form.unit) },
  ],
  typed: '',
})

const withUnit = (typed: string, unit: PressureUnit): string => {
  const read = readPressureText(typed, { as: 'reading', ownUnit: unit })
  return read.ok && read.value.unitStated ? typed : `${typed} ${unitLabel[unit]}`
}

export type Gap = { field: keyof ReadingForm; message: string }

/**
 * Lowest and highest of what was watched lie on either side of every reading of it: anything else is a slip, and it is
 * not known which of the numbers is the wrong one.
 */
function outOfOrder(
  samples: readonly number[],
  lowest: number | undefined,
  highest: number | undefined,
): Gap[] {
  if (lowest !== undefined && highest !== undefined && lowest > highest)
    return [{ field: 'lowest', message: 'The lowest value is above the highest. Swap the two.' }]
  const gaps: Gap[] = []
  if (lowest !== undefined && samples.some((sample) => sample < lowest))
    gaps.push({
      field: 'lowest',
      message: 'The lowest value is above a reading. One of the two is a slip: look at the gauge again.',
    })
  if (highest !== undefined && samples.some((sample) => sample > highest))
    gaps.push({
      field: 'highest',
      message: 'The highest value is below a reading. One of the two is a slip: look at the gauge again.',
    })
  return gaps
}

/** What the form amounts to: a reading, or what is still missing or cannot be read, in the order of the form. */
export type FormReading = { reading: Reading; warnings: string[] } | { gaps: Gap[] }

/** Reads the form. Nothing is filled in for the technician; a number's own minus sign states its sense. */
export function readForm(form: ReadingForm, position: PositionBody): FormReading {
  const gaps: Gap[] = []
  const warnings: string[] = []
  const senses = new Set<Sense>()
  const pascals = (text: string, field: keyof ReadingForm, isTypedNow = true): number | undefined => {
    const read = readPressureText(text, { as: 'reading', ownUnit: form.unit })
    if (!read.ok) {
      gaps.push({ field, message: read.problem.message })
      return undefined
    }
    if (read.value.sense !== 'not stated') senses.add(read.value.sense)
    warnings.push(...read.value.warnings.map((warning) => warning.message))
    // A kept start says its own unit, whichever is chosen by now; what is being typed was typed beside the chosen one.
    if (isTypedNow && read.value.unitStated && read.value.unit !== form.unit)
      warnings.push(
        `“${text.trim()}” says ${unitLabel[read.value.unit]}, and ${unitLabel[form.unit]} is chosen. Was ${unitLabel[form.unit]} meant? Then take the unit out; if not, choose ${unitLabel[read.value.unit]}.`,
      )
    return read.value.pascals
  }
  const samples = [
    ...form.starts.map((start) => pascals(start.text, 'typed', false)),
    ...(form.typed.trim() === '' ? [] : [pascals(form.typed, 'typed')]),
  ].filter((value) => value !== undefined)
  if (samples.length === 0 && gaps.length === 0) {
    gaps.push({ field: 'typed', message: 'Type what the gauge shows.' })
  }
  const optional = (text: string, field: 'lowest' | 'highest') =>
    text.trim() === '' ? undefined : pascals(text, field)
  const lowest = optional(form.lowest, 'lowest')
  const highest = optional(form.highest, 'highest')
  gaps.push(...outOfOrder(samples, lowest, highest))
  const secondsWatched = form.watched.trim() === '' ? undefined : Number(form.watched.replace(',', '.'))
  if (secondsWatched !== undefined && !(secondsWatched >= 0)) {
    gaps.push({ field: 'watched', message: 'Type the seconds as a number, for instance 60.' })
  }
  if (senses.size > 1) {
    gaps.push({
      field: 'sense',
      message: 'One number says suction, another pressure. Look at the gauge: which is right?',
    })
  }
  if (form.phase === '') gaps.push({ field: 'phase', message: 'Say when in the run it was read.' })
  if (form.contacts === '')
    gaps.push({ field: 'contacts', message: 'Say what the contact showed at that moment.' })
  if (gaps.length > 0 || form.phase === '' || form.contacts === '') return { gaps }
  return {
    warnings: [...new Set(warnings)],
    reading: {
      samples,
      sense: [...senses][0] ?? form.sense,
      kind: position.kind,
      between: form.between,
      tap: form.tap,
      stage: form.stage,
      door: form.door,
      phase: form.phase,
      contacts: form.contacts,
      averaging: form.averaging,
      separateStarts: form.starts.length > 0,
      ...(lowest === undefined ? {} : { lowest }),
      ...(highest === undefined ? {} : { highest }),
      ...(secondsWatched === undefined ? {} : { secondsWatched }),
    },
  }
}
