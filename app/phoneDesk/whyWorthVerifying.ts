import { lookUpDays } from '@/lib/records/lookUps'
import type { WorthVerifying } from '@/lib/records/view/desk/worthVerifying'
import { countOf } from '../callbacks/countOf'

type Uses = Pick<WorthVerifying, 'lookedUp' | 'furnaces' | 'asked' | 'level'>

/**
 * Why a rating stands in the list: what it is used for, and how it stands.
 *
 * @example "Looked up 14 times by the team in 90 days, in 3 serviced furnaces, Unverified"
 */
export function whyWorthVerifying({ lookedUp, furnaces, asked, level }: Uses): string {
  const said = [
    lookedUp > 0 && `looked up ${countOf(lookedUp, 'time')} by the team in ${lookUpDays} days`,
    furnaces > 0 && `in ${countOf(furnaces, 'serviced furnace')}`,
    asked > 0 && countOf(asked, 'open question'),
    level,
  ].filter((words) => words !== false)
  const sentence = said.join(', ')
  return sentence.charAt(0).toUpperCase() + sentence.slice(1)
}
