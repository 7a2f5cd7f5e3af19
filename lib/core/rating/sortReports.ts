import { whyNotCounted } from './explain'
import { stepPascalsOf } from './resolution'
import { isLeadSource } from './sources'
import type { Ask, RatingReport } from './types'

/** A report that lends no weight, and why. A report made for elsewhere is trusted like a label of unknown origin. */
export type SortedLead = { report: RatingReport; why: string; elsewhere: boolean; asks: readonly Ask[] }

/** Reports sorted by what they may do: be weighed, be listed, or be refused with a reason. */
export type Sorted = { evidence: RatingReport[]; leads: SortedLead[]; reasons: string[] }

const check = (report: RatingReport): void => {
  const { pascals, toleranceAbove = 0, toleranceBelow = 0, gaugeUncertaintyPascals = 0 } = report
  for (const magnitude of [pascals, toleranceAbove, toleranceBelow, gaugeUncertaintyPascals])
    if (!(Number.isFinite(magnitude) && magnitude >= 0))
      throw new RangeError(`Report ${report.id} requires finite magnitudes of 0 Pa or more, not ${magnitude}`)
  if (Number.isNaN(Date.parse(report.saidAt)))
    throw new RangeError(`Report ${report.id} requires a date, not ${report.saidAt}`)
  stepPascalsOf(report)
}

const one = (reports: readonly RatingReport[], what: 'positionKey' | 'action'): void => {
  const words = new Set(reports.map((report) => report[what]))
  if (words.size > 1)
    throw new RangeError(
      `Reports that are weighed together require one ${what}, not ${[...words].join(', ')}`,
    )
}

/** @throws RangeError if two reports have one id, are not of one position, or hold impossible numbers or dates */
export function checkReports(reports: readonly RatingReport[]): void {
  reports.forEach(check)
  one(reports, 'positionKey')
  if (new Set(reports.map(({ id }) => id)).size < reports.length)
    throw new RangeError('Reports that are weighed together require different ids')
}

/** @throws RangeError if the reports are not of one action */
export const checkOneAction = (reports: readonly RatingReport[]): void => one(reports, 'action')

/**
 * Sorts reports before any weighing: what was read off a general-purpose switch is refused; lead sources, and a
 * factory label on a part that nobody has shown to be the factory's, are leads. The order does not matter.
 */
export function sortReports(reports: readonly RatingReport[]): Sorted {
  const sorted: Sorted = { evidence: [], leads: [], reasons: [] }
  for (const report of [...reports].sort((first, second) => (first.id < second.id ? -1 : 1))) {
    if (report.partClass === 'general-purpose') sorted.reasons.push(whyNotCounted.generalPurpose(report))
    else if (isLeadSource(report.source))
      sorted.leads.push({ report, why: whyNotCounted.leadSource(report), elsewhere: false, asks: [] })
    else if (report.source === 'factory switch label' && report.partClass === 'not known')
      sorted.leads.push({ report, why: whyNotCounted.partNotKnown(), elsewhere: true, asks: [] })
    else sorted.evidence.push(report)
  }
  return sorted
}
