import type { Complaint } from '@/lib/core/guard'

/** The causes that lie in the switch itself, each as what a switch is blamed for. */
const blamedAs: Readonly<Record<string, Complaint>> = {
  'wrong-switch-fitted': 'wrong part fitted',
  'contacts-resistive': 'drops voltage when closed',
  'switch-stuck-closed': 'will not open',
}

/** What can be asked of any switch; each has its own list of what must be on record. */
export const everyComplaint: readonly Complaint[] = [
  'will not close',
  'opens early',
  'will not open',
  'drops voltage when closed',
  'wrong part fitted',
]

/**
 * What a replaced switch may have been blamed for. No record says it, so it is taken from the cause that was named:
 * one of the switch's own causes says which. Any other cause, and none at all, leaves what a pressure switch is
 * mostly blamed for: that it will not close, or opens early.
 */
export const complaintsFor = (cause: string | undefined): readonly Complaint[] => {
  const blamed = cause === undefined ? undefined : blamedAs[cause]
  return blamed === undefined ? everyComplaint.slice(0, 2) : [blamed]
}
