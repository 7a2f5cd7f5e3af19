import { type CaseShare, fewestForShare } from '@/lib/records/view/callbacks/caseShare'

/** A count of cases as words. Under ten cases no per cent is said: it would look like more than it is. */
export function shareWords({ count, of }: Pick<CaseShare, 'count' | 'of'>): string {
  if (of === 0) return 'none'
  return of < fewestForShare ? `${count} of ${of}` : `${count} of ${of} (${Math.round((100 * count) / of)} %)`
}
