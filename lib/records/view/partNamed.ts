import { plainPartNumber } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { PartBody } from '../kinds/part'

/** The part on file that a number names, general-purpose ones too; how it is spelt does not matter. */
export const partNamed = (file: TeamFile, partNumber: string): Entry<PartBody> | undefined =>
  partNumber.trim() === ''
    ? undefined
    : counting(file.parts).find(
        ({ body }) => plainPartNumber(body.partNumber) === plainPartNumber(partNumber),
      )
