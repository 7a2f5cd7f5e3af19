import { restsOnSwitchInHand } from './sources'
import type { RatingReport } from './types'

/**
 * What makes two reports of one origin: the origin that they state (a call, a document page, a switch in hand), the
 * picture that both were read off, or the same switch, or the same data plate, of one furnace. A report that states
 * none of these is an origin of its own.
 */
function originKeysOf({ id, origin, photo, source, furnaceId, positionKey }: RatingReport): string[] {
  const keys = origin === undefined ? [] : [`stated ${origin}`]
  if (photo !== undefined) keys.push(`photo ${photo}`)
  if (furnaceId !== undefined && restsOnSwitchInHand(source))
    keys.push(`switch ${positionKey} of ${furnaceId}`)
  if (furnaceId !== undefined && source === 'data plate') keys.push(`data plate of ${furnaceId}`)
  return keys.length === 0 ? [`report ${id}`] : keys
}

/**
 * The reports, grouped by origin. Two photos of one switch are one origin, and so is whatever shares an origin with
 * either of them.
 * @example byOrigin([labelOfSwitchA, secondPhotoOfSwitchA, distributor]) // [[labelOf…, secondPhoto…], [distributor]]
 */
export function byOrigin(reports: readonly RatingReport[]): RatingReport[][] {
  let groups: { keys: string[]; members: RatingReport[] }[] = []
  for (const report of reports) {
    const keys = originKeysOf(report)
    const joined = groups.filter((group) => group.keys.some((key) => keys.includes(key)))
    groups = [
      ...groups.filter((group) => !joined.includes(group)),
      {
        keys: [...joined.flatMap((group) => group.keys), ...keys],
        members: [...joined.flatMap((group) => group.members), report],
      },
    ]
  }
  return groups.map((group) => group.members)
}
