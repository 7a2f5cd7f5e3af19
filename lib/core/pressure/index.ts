export { formatPressure, pressureNumeral, unitLabel, usualDecimals } from './formatPressure'
export { plausibilityWarnings } from './plausibility'
export type { PressureText, ReadPressureOptions, Warning } from './pressureText'
export { readPressureText } from './readPressureText'
export { readRatingText } from './readRatingText'
export { spellDigits, spellPressure } from './spellPressure'
export {
  fromPascals,
  inchOfWater4CelsiusPascals,
  inchOfWater60FahrenheitPascals,
  type PressureUnit,
  pascalsPer,
  pressureUnits,
  toPascals,
  ucumCode,
} from './units'
export { confirmRatingRange, isUsualRating, usualRatingRange } from './usualRange'
export { toleranceWarnings } from './writingWarnings'
