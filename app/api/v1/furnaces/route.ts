import { apiRoute } from '@/lib/server/api/apiRoute'
import { furnacesOnFile } from '@/lib/server/api/furnacesOnFile'
import { findFurnaces } from '@/lib/server/api/operations'
import { teamFileOf } from '@/lib/server/api/teamFileOf'

/** Furnaces on file, for an office program: `?site=…` or `?serial=…`. */
export const GET = apiRoute(findFurnaces, async ({ query }, { person }) =>
  furnacesOnFile(await teamFileOf(person.role), query),
)
