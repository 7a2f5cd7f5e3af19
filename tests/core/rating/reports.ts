import { type PressureUnit, toPascals } from '@/lib/core/pressure'
import type { RatingReport, RatingSettings } from '@/lib/core/rating'

/** The day on which these tests are played. */
export const settings: RatingSettings = Object.freeze({ now: '2026-01-12T08:00:00Z' })

let made = 0

/**
 * A report of a number as somebody would write it: `reportOf('0.60', { source: 'distributor' })`. Everything else is
 * ordinary: an invented one-port suction switch that closes at a nominal value, said ten days before.
 */
export function reportOf(
  written: string,
  parts: Partial<RatingReport> & { plusMinus?: number } = {},
): RatingReport {
  const { plusMinus, ...rest } = parts
  const unit: PressureUnit = parts.unit ?? 'inH2O'
  made += 1
  const tolerance =
    plusMinus === undefined
      ? {}
      : { toleranceAbove: toPascals(plusMinus, unit), toleranceBelow: toPascals(plusMinus, unit) }
  return Object.freeze({
    id: `report-${String(made).padStart(4, '0')}`,
    positionKey: 'position-main',
    action: 'closes',
    limit: 'nominal',
    pascals: toPascals(Number(written), unit),
    sense: 'suction',
    decimals: (written.split('.')[1] ?? '').length,
    unit,
    asWritten: `${written} ${unit}`,
    kind: 'one-port',
    between: 'port and room',
    tap: 'inducer inlet',
    stage: 'single stage',
    source: 'distributor',
    saidAt: '2026-01-02',
    saidBy: 'a person',
    ...tolerance,
    ...rest,
  } satisfies RatingReport)
}

type Parts = Parameters<typeof reportOf>[1]

/** The label on the factory switch, photographed: reliability 97/100. */
export const photoLabel = (written: string, parts: Parts = {}) =>
  reportOf(written, { source: 'factory switch label', proof: 'photo', ...parts })

/** A distributor who heard the number read back, with a reference: 90/100. */
export const readBackDistributor = (written: string, parts: Parts = {}) =>
  reportOf(written, { source: 'distributor', readBack: true, proof: 'call reference', ...parts })

/** A distributor, with a reference, the number not read back: 75/100. */
export const unreadDistributor = (written: string, parts: Parts = {}) =>
  reportOf(written, { source: 'distributor', readBack: false, proof: 'call reference', ...parts })

/** Factory technical support, read back, with a reference: 96/100. */
export const factorySupport = (written: string, parts: Parts = {}) =>
  reportOf(written, { source: 'factory support', readBack: true, proof: 'call reference', ...parts })

/** A page of the maker's current literature: 96/100. */
export const currentPage = (written: string, parts: Parts = {}) =>
  reportOf(written, { source: 'current literature', proof: 'document', ...parts })
