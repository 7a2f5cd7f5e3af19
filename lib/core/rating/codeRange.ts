import type { CodeRange } from '@/lib/core/vocabulary'

/** Runs of digits and of letters; case, width, blanks and punctuation do not count. */
const runsOf = (code: string): string[] =>
  code
    .normalize('NFKC')
    .toUpperCase()
    .match(/[0-9]+|[^0-9\p{P}\p{Z}]+/gu) ?? []

const isNumber = (run: string): boolean => /^[0-9]/.test(run)

/**
 * Orders two serial or revision codes the way most makers count: runs of digits as numbers, runs of letters as
 * letters, from the left (common practice, no published source). Undefined where the runs are not of one kind, or
 * one code goes on where the other ends: nobody can order those without the maker's word.
 *
 * @example compareCodes('A9', 'A10') // negative
 * @example compareCodes('A9', '9A') // undefined
 */
export function compareCodes(first: string, second: string): number | undefined {
  const [firstRuns, secondRuns] = [runsOf(first), runsOf(second)]
  if (firstRuns.length === 0 || secondRuns.length === 0) return undefined
  for (let at = 0; at < Math.min(firstRuns.length, secondRuns.length); at++) {
    const [one, other] = [firstRuns[at]!, secondRuns[at]!]
    if (isNumber(one) !== isNumber(other)) return undefined
    if (isNumber(one)) {
      const difference = BigInt(one) - BigInt(other)
      if (difference !== 0n) return difference < 0n ? -1 : 1
    } else if (one !== other) {
      if (one.length !== other.length) return undefined
      return one < other ? -1 : 1
    }
  }
  return firstRuns.length === secondRuns.length ? 0 : undefined
}

/**
 * Whether a code lies in a range, both ends included; undefined when it cannot be told. An end left out is open.
 * @param compare the maker's order
 * @example isInCodeRange('B', { from: 'A', to: 'C' }, compareCodes) // true
 */
export function isInCodeRange(
  code: string,
  { from, to }: CodeRange,
  compare: (first: string, second: string) => number | undefined,
): boolean | undefined {
  const afterFrom = from === undefined ? 1 : compare(code, from)
  const beforeTo = to === undefined ? -1 : compare(code, to)
  if ((afterFrom !== undefined && afterFrom < 0) || (beforeTo !== undefined && beforeTo > 0)) return false
  return afterFrom === undefined || beforeTo === undefined ? undefined : true
}
