import { apiRoute } from '@/lib/server/api/apiRoute'
import { fileCase } from '@/lib/server/api/operations'
import { storeCase } from '@/lib/server/api/storeCase'

/** Files a case as said by an office program. Takes { furnaceId, complaint, circuit, … }. */
export const POST = apiRoute(
  fileCase,
  ({ body }, caller) => storeCase(body, caller, new Date()),
  ({ outcome }) => (outcome === 'stored' ? 201 : 200),
)
