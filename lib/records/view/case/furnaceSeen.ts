import { type FurnaceForRating, plainPartNumber } from '@/lib/core/rating'
import { furnaceForRating } from '../furnaceForRating'
import type { CaseFile } from './caseFile'

/**
 * The serial number on the plate on the day of a case, where it is another than the one on file: another furnace may
 * stand there. Blanks, dashes and case make no other number.
 */
export function otherSerialSeen({ entry, furnace }: Pick<CaseFile, 'entry' | 'furnace'>): string | undefined {
  const { serialSeen } = entry.body
  const { serial } = furnace.body
  return serialSeen === undefined ||
    serial === undefined ||
    plainPartNumber(serialSeen) === plainPartNumber(serial)
    ? undefined
    : serialSeen
}

/**
 * The furnace of a case as the weighing is told of it. Where another serial number was on its plate, what is on file of
 * the old one by its serial, its revision or its own readings is not taken for it.
 */
export function furnaceOfCase(of: Pick<CaseFile, 'entry' | 'furnace'>): FurnaceForRating {
  const serial = otherSerialSeen(of)
  const onFile = furnaceForRating(of.furnace)
  if (serial === undefined) return onFile
  const { id: _old, revision: _oldRevision, ...place } = onFile
  return { ...place, id: of.entry.id, serial }
}
