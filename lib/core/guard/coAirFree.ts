/**
 * CO as if no air had been drawn in beside what burned: measured × 20.9 / (20.9 − O₂). Limits in manuals are air-free.
 * The standard formula of combustion analysis (from memory; common practice, no published source at hand).
 *
 * @param measuredPpm CO in the flue as the meter shows it, zero or more
 * @param oxygenPercent oxygen at the same moment, from 0 to below 20.9
 * @throws RangeError outside those ranges
 * @example coAirFree(60, 8)   // 97.2 ppm
 */
export function coAirFree(measuredPpm: number, oxygenPercent: number): number {
  if (!(measuredPpm >= 0 && measuredPpm < Number.POSITIVE_INFINITY))
    throw new RangeError(`coAirFree requires CO of zero or more ppm, not ${measuredPpm}`)
  if (!(oxygenPercent >= 0 && oxygenPercent < oxygenInAirPercent))
    throw new RangeError(
      `coAirFree requires oxygen from 0 to below ${oxygenInAirPercent} %, not ${oxygenPercent}`,
    )
  // The quotient first: it is never below 1, so that rounding never makes the figure less than what was measured.
  return measuredPpm * (oxygenInAirPercent / (oxygenInAirPercent - oxygenPercent))
}

/** Oxygen in dry air, per cent by volume, to the digit that analysers use. */
const oxygenInAirPercent = 20.9
