/** Amounts of money: read, kept as whole numbers of the smallest unit, and said. */
export { amountWords, mostMinorUnits, readAmount } from './amount'
export { minorDigits } from './minorDigits'
