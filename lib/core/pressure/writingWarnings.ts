import type { ValueLabel } from './labels'
import type { PressureText, Warning } from './pressureText'
import type { Parts, StatedValue } from './values'

/** What the signs of a value leave to be looked at. */
export function signWarnings(value: StatedValue, contradicting: boolean): Warning[] {
  const warnings: Warning[] = []
  if (contradicting)
    warnings.push({
      code: 'contradicting-sense',
      message:
        'The sign and the words disagree on suction or pressure, so neither was taken. Say which it is.',
    })
  if (value.sign?.doubled)
    warnings.push({
      code: 'sign-doubled',
      message: `The sign is doubled: ${value.sign.text}${value.number.text} was read with one. Check the label.`,
    })
  if (value.sign?.unclear)
    warnings.push({
      code: 'sign-unclear',
      message: `“${value.sign.text}” before ${value.number.text} may be a sign or only a dash. Check the label.`,
    })
  return warnings
}

/** What a tolerance leaves to be looked at. */
export function toleranceWarnings(
  rating: Pick<PressureText, 'pascals' | 'toleranceAbove' | 'toleranceBelow'>,
  signed: boolean,
): Warning[] {
  const { pascals, toleranceAbove = 0, toleranceBelow = 0 } = rating
  const warnings: Warning[] = []
  if (signed && toleranceAbove !== toleranceBelow)
    warnings.push({
      code: 'tolerance-direction',
      message:
        'The number has a sign, so the uneven tolerance can be meant in two ways. It was read as more and less of the size; confirm it with the source.',
    })
  if (pascals > 0 && Math.max(toleranceAbove, toleranceBelow) >= pascals)
    warnings.push({
      code: 'tolerance-too-wide',
      message: 'The tolerance is as large as the value. Check both decimal points and units.',
    })
  return warnings
}

/** What the words beside a value leave to be looked at. */
export function labelWarnings(label: ValueLabel, hasTolerance: boolean): Warning[] {
  const warnings: Warning[] = []
  if (label.undecoded.length > 0)
    warnings.push({
      code: 'abbreviation-not-decoded',
      message: `“${label.undecoded.join(' ')}” means different things to different makers and was not interpreted. Ask the source whether the number is where the switch closes or opens.`,
    })
  if (label.actionUnclear)
    warnings.push({
      code: 'action-unclear',
      message: 'The text does not say plainly whether the switch closes or opens at this number. Say which.',
    })
  if (label.limitUnclear)
    warnings.push({
      code: 'limit-unclear',
      message: 'The text calls the number more than one of maximum, minimum and nominal. Say which.',
    })
  if (label.limit && label.limit !== 'nominal' && hasTolerance)
    warnings.push({
      code: 'limit-and-tolerance',
      message: `The number is a ${label.limit} and also has a tolerance. Confirm with the source what is meant.`,
    })
  if (label.pairedByOrder)
    warnings.push({
      code: 'paired-by-order',
      message: 'Words and numbers stand in two rows and were paired in their order. Check each pair.',
    })
  return warnings
}

/** What was in the text and not taken for part of the rating. */
export function leftOutWarnings(parts: Parts): Warning[] {
  const warnings: Warning[] = [...parts.codes, ...parts.foreign].map((text) => ({
    code: 'number-left-out',
    message: `“${text}” was not taken for a pressure.`,
  }))
  if (parts.toleranceAlone)
    warnings.push({
      code: 'tolerance-left-out',
      message: 'A tolerance stands apart from the number and was left out. Enter it by hand.',
    })
  return warnings
}
