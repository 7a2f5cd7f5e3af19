import type { z } from 'zod'
import { plainPartNumber } from '@/lib/core/rating'
import { failure, type Result, success } from '@/lib/core/result'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { findFurnaces } from './operations'

type Asked = z.infer<typeof findFurnaces.query>
type Found = z.infer<typeof findFurnaces.answer>

/** The most that are answered at once. */
const most = 50

/** Furnaces by a part of their site label, or by their whole serial number. */
export function furnacesOnFile(file: TeamFile, { site, serial }: Asked): Result<Found> {
  if (site === undefined && serial === undefined) {
    return failure('nothing-asked', 'Say which furnaces: by site, by serial, or by both.')
  }
  // A serial number is compared as a part number is: people leave out the same signs.
  const found = counting(file.furnaces)
    .filter(
      ({ body }) =>
        (site === undefined || plainPartNumber(body.siteLabel).includes(plainPartNumber(site))) &&
        (serial === undefined || plainPartNumber(body.serial ?? '') === plainPartNumber(serial)),
    )
    .toSorted((one, other) => one.body.siteLabel.localeCompare(other.body.siteLabel, 'en'))
  return success({
    furnaces: found.slice(0, most).map(({ id, body }) => {
      const { siteLabel, model, branch, serial, revision, elevationMetres } = body
      return { id, siteLabel, model, branch, serial, revision, elevationMetres }
    }),
    more: found.length > most,
  })
}
