import { failure, type Result, success } from '../result'
import { type LabelledValue, labelled } from './labels'
import { plainText } from './plainText'
import { plausibilityWarnings } from './plausibility'
import type { PressureText, ReadPressureOptions } from './pressureText'
import { mergeSamePressures } from './samePressure'
import { senseOf, sensesInWords } from './sense'
import { type UnitSaid, withUnits } from './statedUnits'
import { nothingFoundProblem, spoilingProblem, togetherProblem } from './textProblems'
import { tokensOf } from './tokens'
import { pressureUnits, toPascals } from './units'
import { type StatedValue, valuesIn } from './values'
import { labelWarnings, leftOutWarnings, signWarnings, toleranceWarnings } from './writingWarnings'

/** A rating label has a few dozen characters; this bounds the work. */
const longestText = 200

/** What is said of one value, all but the warnings and the text itself. */
function statement(
  value: LabelledValue & { unitSaid: UnitSaid },
  sense: PressureText['sense'],
): Omit<PressureText, 'warnings' | 'asWritten'> {
  const { label, unitSaid } = value
  const { unit, stated } = unitSaid
  const pascals = toPascals(value.number.value, unit)
  const inPascals = (amount: NonNullable<StatedValue['above']>) =>
    amount.percent ? (pascals * amount.value) / 100 : toPascals(amount.value, amount.unit ?? unit)
  const limit = label.limit ?? (value.above && !label.limitUnclear ? 'nominal' : undefined)
  return {
    pascals,
    sense,
    value: value.number.value,
    unit,
    unitStated: stated,
    decimals: value.number.decimals,
    ...(label.action && { action: label.action }),
    ...(limit && { limit }),
    ...(value.above && { toleranceAbove: inPascals(value.above) }),
    ...(value.below && { toleranceBelow: inPascals(value.below) }),
  }
}

/**
 * Every pressure that a text states, in order, or the problem that keeps it from being read. A text that states
 * several without naming each is refused. No text makes it throw.
 * @throws RangeError if `options.ownUnit` is not a known unit
 */
export function readPressures(text: string, options: ReadPressureOptions = {}): Result<PressureText[]> {
  const { ownUnit = 'inH2O', as = 'rating' } = options
  if (!pressureUnits.includes(ownUnit))
    throw new RangeError(`readPressures requires a known own unit, not ${ownUnit}`)
  if (text.length > longestText)
    return failure('too-long', `The text has more than ${longestText} characters. Write only the rating.`)
  const tokens = tokensOf(plainText(text))
  const parts = valuesIn(tokens, ownUnit)
  const spoiling =
    spoilingProblem(tokens, parts) ?? (parts.values.length === 0 ? nothingFoundProblem(parts) : undefined)
  if (spoiling) return { ok: false, problem: spoiling }
  const values = withUnits(
    tokens,
    labelled(tokens, mergeSamePressures(tokens, parts.values, ownUnit)),
    ownUnit,
  )
  const together = togetherProblem(values)
  if (together) return { ok: false, problem: together }
  if (as === 'rating' && values.some((value) => value.number.value === 0))
    return failure('zero-is-no-rating', 'No switch is set at zero. Write the number that the source gives.')
  const inWords = sensesInWords(tokens, values)
  return success(
    values.map((value): PressureText => {
      const { sense, contradicting } = senseOf(value, inWords)
      const said = statement(value, sense)
      const warnings = [
        ...plausibilityWarnings(said.value, said.unit, as),
        ...signWarnings(value, contradicting),
        ...toleranceWarnings(said, value.sign !== undefined),
        ...labelWarnings(value.label, value.above !== undefined),
        ...leftOutWarnings(parts),
      ]
      return { ...said, warnings, asWritten: text }
    }),
  )
}
