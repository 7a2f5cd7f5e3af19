import { causeById } from '@/lib/catalogue/causes'
import { unlistedCause } from '@/lib/core/diagnosis'

/** The name of a cause as the screens show it. */
export const causeName = (id: string): string =>
  id === unlistedCause ? 'Something that is not on the list' : (causeById(id)?.name ?? id)
