import { z } from 'zod'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { changeActive } from '@/lib/server/people/changes'
import { store } from '@/lib/server/people/store'

/** Signs a person out for good. Their records stay. Takes {}. */
export const POST = writeRoute({ roles: ['manager'], form: z.object({}) }, (_typed, manager, id) =>
  changeActive(store().database, id, false, manager.id, new Date()),
)
