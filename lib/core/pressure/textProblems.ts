import type { Problem } from '../result'
import { unitLabel } from './formatPressure'
import type { LabelledValue } from './labels'
import type { UnitSaid } from './statedUnits'
import type { Token } from './token'
import type { Parts } from './values'

const unitHint = 'Write a number and a unit, such as 0.52 in. w.c. or 130 Pa.'

/** What makes a text unreadable whatever else it says. */
export function spoilingProblem(tokens: readonly Token[], parts: Parts): Problem | undefined {
  for (const token of tokens) {
    if (token.kind === 'not finite')
      return { code: 'not-finite', message: `${token.text} is not a pressure. ${unitHint}` }
    if (token.kind === 'unclear') return { code: 'number-unclear', message: token.why }
  }
  const [unclear] = parts.unclear
  return unclear === undefined
    ? undefined
    : {
        code: 'number-unclear',
        message: `${unclear} begins with a zero. If it is a pressure, write its decimal point.`,
      }
}

/** Why no number of a text is a pressure. */
export function nothingFoundProblem({ codes, foreign, toleranceAlone }: Parts): Problem {
  if (codes[0] !== undefined)
    return {
      code: 'looks-like-code',
      message: `${codes[0]} looks like a date code or part number, not a pressure. If it is one, write its decimal point and unit.`,
    }
  if (foreign[0] !== undefined)
    return {
      code: 'unit-not-known',
      message: `${foreign[0]} is not a pressure in a unit known here. ${unitHint}`,
    }
  return {
    code: 'no-number',
    message: toleranceAlone
      ? 'Only a tolerance was found. Write the pressure before it, such as 0.60 ±0.05.'
      : `No number was found. ${unitHint}`,
  }
}

/** Whether every value has a name of its own on the label, so that two of them are two ratings. */
function eachNamed(values: readonly LabelledValue[]): boolean {
  const names = values.map(({ label }) => label.action ?? label.undecoded.join(' ').toUpperCase())
  return names.every((name) => name !== '') && new Set(names).size === names.length
}

/** Why the values of a text are not one pressure, or one for each name. */
export function togetherProblem(
  values: readonly (LabelledValue & { unitSaid: UnitSaid })[],
): Problem | undefined {
  const written = values
    .map(({ number, units: [unit] }) => (unit ? `${number.text} ${unitLabel[unit]}` : number.text))
    .join(' and ')
  if (values.some(({ unitSaid }) => unitSaid.contradicting))
    return { code: 'contradicting-units', message: `The text gives ${written} a second unit. Write one.` }
  if (values.length < 2 || eachNamed(values)) return undefined
  return new Set(values.flatMap((value) => value.units)).size > 1
    ? {
        code: 'contradicting-units',
        message: `${written} are not the same pressure. Write the one that is meant.`,
      }
    : {
        code: 'several-numbers',
        message: `Several numbers were found (${written}). Write one, or say which closes and which opens.`,
      }
}
