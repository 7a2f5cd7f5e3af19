import { type CaseShare, fewestForShare } from '@/lib/records/view/callbacks/caseShare'
import { perCentWords } from '../figureWords'

/**
 * What changed in a count of a month.
 * @example changeWords(3, 5) // '2 fewer'
 */
export function changeWords(month: number, before: number): string {
  const difference = month - before
  return difference === 0 ? 'the same' : difference > 0 ? `${difference} more` : `${-difference} fewer`
}

/**
 * What changed in a share: said in shares, because the two counts are out of different numbers. Nothing is compared
 * that can still grow, or that is of too few cases.
 * @example shareChange({ count: 3, of: 17, … }, { count: 3, of: 21, … }, false) // '18 % against 14 %: chance alone can make that'
 */
export function shareChange(month: CaseShare, before: CaseShare, isOpen: boolean): string {
  if (isOpen) return 'open, not compared'
  if (month.of < fewestForShare || before.of < fewestForShare) return 'too few to compare'
  const said = `${perCentWords(month.count / month.of)} against ${perCentWords(before.count / before.of)}`
  return `${said}: ${doOverlap(month.interval95!, before.interval95!) ? 'chance alone can make that' : 'more than chance easily makes'}`
}

type Interval = NonNullable<CaseShare['interval95']>

const doOverlap = ([low, high]: Interval, [otherLow, otherHigh]: Interval): boolean =>
  low <= otherHigh && otherLow <= high
