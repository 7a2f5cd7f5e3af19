import type { Observations } from '@/lib/core/diagnosis'
import type { Checked, LookName } from '@/lib/core/guard'
import { lookNames } from '@/lib/core/guard'
import { findings } from './index'

/** The findings that bear on each look, with what each of their values says about it. */
const proofs = lookNames.map((look) => ({
  look,
  by: findings.flatMap(({ id, proves }) =>
    proves?.look === look ? [{ id, whenValue: proves.whenValue }] : [],
  ),
}))

/**
 * What the findings of a case say about the looks that come before a switch may be blamed. A look has found a fault
 * as soon as one finding says so. It is clear when every finding that can call it clear does: a hose is clear when it
 * is whole, dry and on the right port, not when one of these was looked at. Otherwise it is not checked.
 * @example looksFromFindings({ port: 'plugged' }).port // 'fault found'
 */
export function looksFromFindings(observed: Observations): Record<LookName, Checked> {
  const stateOf = (by: (typeof proofs)[number]['by']): Checked => {
    const said = by.map(({ id, whenValue }) => ({
      now: whenValue[observed[id] ?? ''],
      canClear: Object.values(whenValue).includes('clear'),
    }))
    if (said.some(({ now }) => now === 'fault found')) return 'fault found'
    return said.every(({ now, canClear }) => !canClear || now === 'clear') ? 'clear' : 'not checked'
  }
  return Object.fromEntries(proofs.map(({ look, by }) => [look, stateOf(by)])) as Record<LookName, Checked>
}
