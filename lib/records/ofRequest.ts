import type { Lookup, Refusal } from './envelope'

/** Why a record that speaks of rating requests cannot: something that it names is none. The records are there. */
export function whyNotOfRequests(requestIds: readonly string[], lookup: Lookup): Refusal | undefined {
  return requestIds.every((id) => lookup(id)?.kind === 'rating request')
    ? undefined
    : {
        rule: 'it belongs to a rating request',
        sentence: 'A request that it names is no rating request. Open it from the Phone desk.',
      }
}
