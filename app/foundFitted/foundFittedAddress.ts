/** What is known already of a switch that should not be in. */
export type KnownSwitch = {
  positionId?: string
  furnaceId?: string
  /** The part on file that it is: a record's id. */
  partId?: string
  /** What is printed on it, letter for letter. */
  printed?: string
}

/** Where a switch is recorded as found fitted, with what is known of it, so that nothing is typed twice. */
export function foundFittedHref({ positionId, furnaceId, partId, printed }: KnownSwitch): string {
  const known = { position: positionId, furnace: furnaceId, fitted: partId, printed: printed?.trim() }
  const query = new URLSearchParams(
    Object.entries(known).flatMap(([name, value]) => (value ? [[name, value]] : [])),
  )
  return query.size === 0 ? '/found-fitted' : `/found-fitted?${query}`
}
