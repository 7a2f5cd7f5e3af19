import { fromPascals, type PressureUnit, toPascals } from '@/lib/core/pressure'
import type { Action } from '@/lib/core/vocabulary'
import type { Candidate } from './candidates'
import { roundsTo, type StatedNumber } from './resolution'
import type { KnownValues, Slip } from './types'

/** The units that people in this trade mix up. */
const mixedUpUnits: readonly PressureUnit[] = ['inH2O', 'Pa', 'mbar']

/** Whether a rival is ten times the value, or a tenth of it. */
export const decimalSlip = (
  valuePascals: number,
  rival: StatedNumber,
): 'ten times' | 'a tenth' | undefined =>
  valuePascals === 0
    ? undefined
    : roundsTo(valuePascals * 10, rival)
      ? 'ten times'
      : roundsTo(valuePascals / 10, rival)
        ? 'a tenth'
        : undefined

const readInAnotherUnit = (valuePascals: number, { pascals, stepPascals, unit }: Candidate): boolean =>
  mixedUpUnits.some(
    (meant) =>
      meant !== unit &&
      roundsTo(valuePascals, {
        pascals: toPascals(fromPascals(pascals, unit), meant),
        stepPascals: toPascals(fromPascals(stepPascals, unit), meant),
      }),
  )

/**
 * The slip that would turn the likeliest value into a rival, so that whoever must settle it knows what to ask.
 * Undefined when none of the known ones would. It names; it decides nothing.
 *
 * @param valuePascals the likeliest value
 * @param rival the other reported value, as stated
 * @example nameSlip(174.4, theKnownBreakPoint, 'closes', known) // 'break taken for make'
 */
export function nameSlip(
  valuePascals: number,
  rival: Candidate,
  action: Action,
  known: KnownValues,
): Slip | undefined {
  if (action !== 'not stated' && known.otherAction.some((pascals) => roundsTo(pascals, rival)))
    return action === 'closes' ? 'break taken for make' : 'make taken for break'
  if (known.sister.some((pascals) => roundsTo(pascals, rival))) return 'sister switch taken for this one'
  return (
    decimalSlip(valuePascals, rival) ??
    (readInAnotherUnit(valuePascals, rival) ? 'number read in another unit' : undefined)
  )
}
