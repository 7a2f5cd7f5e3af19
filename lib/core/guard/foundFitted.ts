import type { DangerCode } from './dangerFindings'
import type { Part } from './types'

/**
 * What a part found fitted adds to the danger findings. The record of it is always accepted, also when it was us; an
 * adjustable or general-purpose switch makes the case hazardous until the factory part is back or the furnace is
 * left off.
 * @example dangerOfFitted({ partClass: 'factory', adjustable: true }) // ['general-purpose-switch-fitted']
 */
export const dangerOfFitted = (part: Pick<Part, 'partClass' | 'adjustable'>): DangerCode[] =>
  part.partClass === 'general-purpose' || part.adjustable === true ? ['general-purpose-switch-fitted'] : []
