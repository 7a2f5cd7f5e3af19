import { sources } from '@/lib/catalogue/sources'
import { stageWords, tapWords } from '@/lib/catalogue/switchKinds'
import { feetOf } from '@/lib/catalogue/units'
import { spellDigits, spellPressure } from '@/lib/core/pressure'
import type { Between, ElevationBand, Level } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { RatingRequestBody } from '@/lib/records/kinds/ratingRequest'
import type { ReportBody } from '@/lib/records/kinds/report'
import { proofWords } from '@/lib/records/view/sourceWords'
import { sayDate } from '../ui/words/sayDate'

const digits = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']
const spoken: Readonly<Record<string, string>> = {
  '-': 'dash',
  '–': 'dash',
  '/': 'stroke',
  '.': 'point',
  '*': 'star',
  ' ': 'space',
  // Heard or written down, these are taken for a digit.
  O: 'letter O',
  I: 'letter I',
}

/**
 * A model, serial or part number for reading out, character by character.
 * @example sayCode('LF2-08O')   // 'L F two dash zero eight letter O'
 */
export const sayCode = (code: string): string =>
  [...code.toUpperCase()]
    .map((character) =>
      /\d/.test(character) ? digits[Number(character)]! : (spoken[character] ?? character),
    )
    .join(' ')

type Bundle = Pick<
  ReportBody,
  | 'action'
  | 'limit'
  | 'pascals'
  | 'unit'
  | 'decimals'
  | 'sense'
  | 'toleranceAbove'
  | 'toleranceBelow'
  | 'stage'
  | 'between'
  | 'tap'
  | 'elevationBand'
  | 'partNumber'
>

const spokenBetween: Readonly<Record<Between, string>> = {
  'port and room': 'port to room',
  'port and cabinet': 'port to cabinet, door on',
  'two ports': 'across both ports',
  'not stated': 'points not stated',
}

const spokenAction = { closes: 'closes', opens: 'opens', 'not stated': 'closes or opens not stated' } as const
const spokenLimit = { nominal: '', maximum: 'at most', minimum: 'at least' } as const

/**
 * The whole bundle in one line, every digit spoken, for reading back while the other side is still on the line.
 * @example sayBundle(…)   // 'negative zero point six five inches, opens, low fire, port to room'
 */
export function sayBundle(bundle: Bundle): string {
  return [
    `${spokenLimit[bundle.limit]} ${spellPressure(bundle)}`.trim(),
    sayTolerance(bundle),
    spokenAction[bundle.action],
    stageWords[bundle.stage],
    spokenBetween[bundle.between],
    bundle.tap === 'not stated' ? '' : tapWords[bundle.tap],
    sayElevation(bundle.elevationBand),
    bundle.partNumber === undefined ? '' : `part number ${sayCode(bundle.partNumber)}`,
  ]
    .filter((words) => words !== '')
    .join(', ')
}

function sayTolerance({ toleranceAbove: above, toleranceBelow: below, unit, decimals }: Bundle): string {
  if (above === undefined && below === undefined) return ''
  const figure = (pascals = 0) => spellDigits(pascals, unit, decimals)
  return figure(above) === figure(below)
    ? `plus or minus ${figure(above)}`
    : `plus ${figure(above)}, minus ${figure(below)}`
}

function sayElevation(band: ElevationBand | undefined): string {
  if (band === undefined || (band.fromMetres === undefined && band.toMetres === undefined)) return ''
  const feet = (metres: number) => `${sayCode(String(Math.round(feetOf(metres))))} feet`
  if (band.fromMetres === undefined) return `up to ${feet(band.toMetres!)}`
  if (band.toMetres === undefined) return `from ${feet(band.fromMetres)} up`
  return `from ${feet(band.fromMetres)} to ${feet(band.toMetres)}`
}

/**
 * An answer as one line to read out to the house: the whole bundle, its level, and its source with its date.
 * @param lookAgain what makes the number look like a slip: it is said right behind the level
 */
export function sayAnswer(
  report: Entry<ReportBody>,
  file: TeamFile,
  switchName: string,
  level: Level,
  lookAgain: readonly string[] = [],
): string {
  const { body, at } = report
  const source = [sources[body.source].words, ...proofWords(report, file)].join(', ')
  return [
    `${switchName}: ${sayBundle(body)}. ${level}.`,
    ...lookAgain.map((sentence) => `Look again: ${sentence}`),
    `${source}, ${sayDate(body.saidOn ?? at)}.`,
  ].join(' ')
}

/** A question as one line to read out over a landline, where there is no signal for it. */
export function sayQuestion(
  request: Pick<RatingRequestBody, 'model' | 'serial' | 'printed' | 'measured' | 'needs'>,
  switchName: string,
): string {
  const { model, serial, printed, measured, needs } = request
  return [
    `Rating wanted for: ${switchName}.`,
    model === undefined ? '' : `Model ${sayCode(model)}.`,
    serial === undefined ? '' : `Serial ${sayCode(serial)}.`,
    `Printed on the switch: ${printed}.`,
    measured === undefined ? '' : `Measured: ${measured}.`,
    needs.length === 0 ? '' : `Why now: ${needs.join(', ')}.`,
  ]
    .filter((words) => words !== '')
    .join(' ')
}
