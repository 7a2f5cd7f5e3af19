import type { FurnaceForRating } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import type { FurnaceBody } from '../kinds/furnace'

/** What the weighing is told of a furnace on file. What is not recorded is left out. */
export function furnaceForRating({ id, body }: Entry<FurnaceBody>): FurnaceForRating {
  const { elevationMetres, revision, serial } = body
  return {
    id,
    ...(elevationMetres === undefined ? {} : { elevationMetres }),
    ...(revision === undefined ? {} : { revision }),
    ...(serial === undefined ? {} : { serial }),
  }
}
