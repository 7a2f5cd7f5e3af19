import { failure, type Result, success } from '@/lib/core/result'
import type { GuardSettings, Part } from './types'

/** Offered with every refusal: a record of what is there is always accepted. */
export const foundFittedOffer = 'It is already in: record it as found fitted, when and by whom.'

const refuse = (code: string, why: string) => failure(code, `${why} ${foundFittedOffer}`)

/**
 * Whether a part may be fitted as a repair of one switch position: only a fixed factory part that the maker names for
 * this model and serial, at this position, with who names it and where.
 * @param position the key of the switch position
 * @returns true, or a problem that says which rule, why, and what to do instead: 'general-purpose-part',
 *   'part-class-not-known', 'part-number-missing', 'listing-missing', 'listing-not-the-makers', 'listed-for-another-position'
 * @example mayFit({ partClass: 'general-purpose' }, { key: 'low fire' }, usualGuardSettings) // refused
 */
export function mayFit(
  part: Part,
  position: { key: string },
  settings: Pick<GuardSettings, 'listers'>,
): Result<true> {
  if (part.partClass === 'general-purpose' || part.adjustable === true)
    return refuse(
      'general-purpose-part',
      'Only the exact factory part may be fitted. The furnace’s rating was proven with its own exchanger, inducer and vent; a switch that is adjustable, or that the maker does not name for this model and serial, can prove air below the safe flow. Order the factory part number.',
    )
  if (part.partClass === 'not known')
    return refuse(
      'part-class-not-known',
      'Only the exact factory part may be fitted, and nobody has said what this one is. Ask the distributor or factory technical support, with model and serial, which part number is right.',
    )
  if (part.partNumber === undefined || part.partNumber.trim() === '')
    return refuse(
      'part-number-missing',
      'Only the exact factory part may be fitted, and its part number is not recorded. Read it off the part.',
    )
  const { listing } = part
  if (listing === undefined || listing.where.trim() === '')
    return refuse(
      'listing-missing',
      'A factory part is one that the maker names for this model and serial. Record who names it and where: the page, or the call with its reference.',
    )
  if (!settings.listers.includes(listing.by))
    return refuse(
      'listing-not-the-makers',
      `A factory part is one that the maker names for this model and serial; a source of the kind “${listing.by}” does not speak for the maker. Find it in the maker’s literature, or ask the distributor or factory technical support.`,
    )
  if (!listing.positionKeys.includes(position.key))
    return refuse(
      'listed-for-another-position',
      'This part is named for another switch position of the furnace. A rating belongs to one position and is never carried over. Look up the part for this position.',
    )
  return success(true)
}
