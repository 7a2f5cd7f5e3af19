import { failure, type Result, success } from '@/lib/core/result'
import type { PartNumber, Supersession } from './types'

export type CurrentPart = {
  orderPart: PartNumber
  /** From the number asked for to the one to order, both included. */
  through: PartNumber[]
  /** Over the whole chain; when not as before, the new part's own rating has to be recorded. */
  setting: Supersession['setting']
}

/**
 * Follows a part number through what replaced it to the one to order today.
 * @returns the part, or a problem: 'supersession-forks' when two numbers replace one, 'supersession-loops'
 * @example A → B, setting as before; B → C, setting changed: order C, setting changed
 */
export function currentPart(
  partNumber: PartNumber,
  supersessions: readonly Supersession[],
): Result<CurrentPart> {
  const through = [partNumber]
  let setting: Supersession['setting'] = 'as before'
  let orderPart = partNumber
  for (;;) {
    const next = supersessions.filter((link) => link.from === orderPart && link.to !== orderPart)
    const [link] = next
    if (link === undefined) return success({ orderPart, through, setting })
    if (next.some((other) => other.to !== link.to))
      return failure(
        'supersession-forks',
        `${orderPart} is replaced by more than one part number. Ask which of them is right for this serial and elevation.`,
      )
    if (through.includes(link.to))
      return failure(
        'supersession-loops',
        `The part numbers on record replace each other in a circle at ${link.to}. Ask which is current, and correct the record.`,
      )
    if (next.some((same) => same.setting === 'changed') || setting === 'changed') setting = 'changed'
    else if (next.some((same) => same.setting === 'not stated')) setting = 'not stated'
    orderPart = link.to
    through.push(orderPart)
  }
}

/** Whether two numbers stand for one part: the same, or one reached from the other through what replaced it. */
export function samePart(
  one: PartNumber,
  other: PartNumber,
  supersessions: readonly Supersession[],
): boolean {
  const reaches = (from: PartNumber, to: PartNumber): boolean => {
    const chain = currentPart(from, supersessions)
    return chain.ok && chain.value.through.includes(to)
  }
  return one === other || reaches(one, other) || reaches(other, one)
}
