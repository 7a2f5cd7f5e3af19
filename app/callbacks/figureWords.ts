import type { LogRank } from '@/lib/core/callbacks/logRank'
import type { Result } from '@/lib/core/result'
import { type CaseShare, fewestForShare } from '@/lib/records/view/callbacks/caseShare'
import { perCent } from '../cases/work/chanceWords'

type Counted = Pick<CaseShare, 'count' | 'of' | 'interval95'>

/** @example outOf({ count: 12, of: 41 }) // '12 of 41' */
export const outOf = ({ count, of }: Pick<CaseShare, 'count' | 'of'>): string => `${count} of ${of}`

/** The share with its interval; a sentence in its place where there are too few cases for one. */
export function shareWithInterval({ count, of, interval95 }: Counted): string {
  if (of === 0 || interval95 === undefined) return 'no job'
  if (of < fewestForShare) return 'too few to say a share'
  return `${perCentWords(count / of)}, between ${intervalWords(interval95)}`
}

/** In whole per cent; the sign stays on the line of its number. */
export const perCentWords = (share: number): string => perCent(share).replaceAll(' %', '\u00a0%')

/** @example intervalWords([0.18, 0.44]) // '18 % and 44 %' */
export const intervalWords = ([low, high]: readonly [number, number]): string =>
  `${Math.round(100 * low)}\u00a0% and ${Math.round(100 * high)}\u00a0%`

/** Under so many jobs all figures together are called small (common practice, no published source). */
const fewJobs = 30

/** What to make of the number of jobs; undefined where it is not small. */
export const smallNumber = (jobs: number): string | undefined =>
  jobs >= fewJobs
    ? undefined
    : jobs === 0
      ? 'No job to count yet: nothing can be said of a share.'
      : `${jobs === 1 ? 'One job is' : `${jobs} jobs are`} few: one callback more or less changes these figures a good deal.`

/** Hours and minutes, as they are said. @example sayMinutes(95) // '1 h 35 min' */
export function sayMinutes(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), Math.round(minutes % 60)]
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}

/**
 * What the log-rank test says, in plain words. Its bounds of one in twenty and one in a hundred are custom.
 * @param callbacks behind all curves together
 * @param smallest how many the smallest group has
 */
export function differenceWords(test: Result<LogRank>, callbacks: number, smallest: number): string {
  const few = [
    ...(callbacks >= fewestForShare
      ? []
      : [
          callbacks === 0
            ? ' No furnace came back so far.'
            : ` ${callbacks === 1 ? 'One callback is' : `${callbacks} callbacks are`} few.`,
        ]),
    ...(smallest >= fewestForShare ? [] : [' A curve of fewer than ten furnaces says little.']),
  ].join('')
  if (!test.ok) return `${test.problem.message}${few}`
  const { pValue } = test.value
  const p = `log-rank test, p ${pValue < 0.001 ? 'under 0.001' : `= ${pValue.toFixed(pValue < 0.1 ? 3 : 2)}`}`
  const often =
    pValue < 0.001
      ? 'less than once in 1,000 times'
      : pValue < 0.05
        ? `about once in ${Math.round(1 / pValue)} times`
        : `about ${Math.round(100 * pValue)} times in 100`
  const said =
    pValue < 0.05
      ? `The curves differ by more than chance easily makes: were the groups alike, so great a difference would come up ${often} (${p}).`
      : `The curves differ by no more than chance often makes: were the groups alike, so great a difference would come up ${often} (${p}). That does not show that they are alike.`
  return `${said}${few}`
}
