import type { CaseState, Complaint } from '@/lib/core/guard'
import { inServiceSituations } from './expectedAt'
import type { JudgedReading } from './judgedReading'

/** The action that a complaint is about; none where it is blamed as the wrong part. */
export function actionOf(complaint: Complaint, kind: CaseState['kind']): 'closes' | 'opens' | undefined {
  switch (complaint) {
    case 'will not close':
      return 'closes'
    case 'opens early':
    case 'will not open':
      return 'opens'
    case 'drops voltage when closed':
      return kind === 'opens on rise' ? 'opens' : 'closes'
    case 'wrong part fitted':
      return undefined
  }
}

/**
 * The newest reading that speaks of the switch: nothing changed for it, and held against the action that the complaint
 * is about, whether it was called as found or after the repair; where none was, the newest that could be held against
 * anything, or else the newest.
 */
export function suspectReading(judged: readonly JudgedReading[], action: 'closes' | 'opens' | undefined) {
  const fit = judged.filter(({ entry }) => inServiceSituations.includes(entry.body.situation))
  const heldAgainst = ({ comparison }: JudgedReading): boolean =>
    comparison.ok &&
    [comparison.value.start, comparison.value.run].some((judgement) => judgement?.against === action)
  return fit.findLast(heldAgainst) ?? fit.findLast(({ comparison }) => comparison.ok) ?? fit.at(-1)
}
