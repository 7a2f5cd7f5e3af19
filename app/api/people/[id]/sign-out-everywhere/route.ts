import { z } from 'zod'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { signOutEverywhere } from '@/lib/server/people/changes'
import { store } from '@/lib/server/people/store'

/** Ends all sessions of a person, e.g. of a lost phone. Takes {}. */
export const POST = writeRoute({ roles: ['manager'], form: z.object({}) }, (_typed, manager, id) =>
  signOutEverywhere(store().database, id, manager.id, new Date()),
)
