import type { Action } from '@/lib/core/vocabulary'

/** What a setpoint does to the contact, in words: the name of its number, and the verb beside its line. */
export const actionWords: Record<Action, { name: string; verb: string }> = {
  closes: { name: 'Closes (make\u00a0point)', verb: 'closes' },
  opens: { name: 'Opens (break\u00a0point)', verb: 'opens' },
  'not stated': { name: 'Closes or opens: not stated', verb: 'action not stated' },
}
