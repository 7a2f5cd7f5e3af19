import type { DangerCode } from '@/lib/core/guard'

/** Something said that shows a danger, or shows that it is gone. */
export type Sighting = {
  at: string
  visitId: string | undefined
  shows: readonly DangerCode[]
  rulesOut: readonly DangerCode[]
}

/**
 * The dangers that the sightings of one thing leave open, each with the moment since when it is (ISO 8601, UTC). A
 * danger that is found again on a later visit is open since then: what was done about it before may be undone.
 * @param sightings oldest first
 */
export function openSince(sightings: readonly Sighting[]): Map<DangerCode, string> {
  const open = new Map<DangerCode, { at: string; visitId: string | undefined }>()
  for (const { at, visitId, shows, rulesOut } of sightings) {
    for (const code of rulesOut) open.delete(code)
    for (const code of shows) {
      const known = open.get(code)
      if (known === undefined || known.visitId !== visitId) open.set(code, { at, visitId })
    }
  }
  return new Map([...open].map(([code, { at }]) => [code, at]))
}
