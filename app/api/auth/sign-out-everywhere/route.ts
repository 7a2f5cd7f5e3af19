import { z } from 'zod'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { signOutEverywhere } from '@/lib/server/people/changes'
import { store } from '@/lib/server/people/store'

/** Ends all sessions of the person who asks, this one included. Takes {}. */
export const POST = writeRoute({ form: z.object({}) }, (_typed, person) =>
  signOutEverywhere(store().database, person.id, person.id, new Date()),
)
