import type { HitRate } from '@/lib/core/diagnosis'
import { perCent } from '../cases/work/chanceWords'

/** Under so many cases a share is not said in per cent: it would look like more than it is. */
export const fewestForShare = 10

/** Under so many cases the whole record is called a small number (common practice, no published source). */
const fewestForRecord = 30

/** @example countOf({ hits: 81, cases: 178, … }) // '81 of 178' */
export const countOf = ({ hits, cases }: Pick<HitRate, 'hits' | 'cases'>): string => `${hits} of ${cases}`

/** The share with its interval; a sentence in its place where there are too few cases for one. */
export function shareOf({ cases, rate, interval95: [from, to] }: HitRate): string {
  return cases < fewestForShare
    ? 'too few to say a share'
    : `${perCent(rate)}, between ${Math.round(100 * from)} % and ${Math.round(100 * to)} %`
}

/** What to make of the number of cases. */
export function howMany(cases: number): string {
  const few = cases === 1 ? 'One case is next to nothing.' : `${cases} cases are few.`
  return cases < fewestForRecord
    ? `${few} Every further winter can move these figures a good deal.`
    : 'The shares are said with how far chance alone could have moved them (19 times in 20).'
}

/** @example winterWords(2023) // 'Winter 2023/24' */
export const winterWords = (began: number): string =>
  `Winter ${began}/${String((began + 1) % 100).padStart(2, '0')}`

/** A mean loss said as a chance: what the true cause was given, in the middle of the cases (geometric mean). */
export const chanceOfLoss = (logLoss: number): string => perCent(Math.exp(-logLoss))
