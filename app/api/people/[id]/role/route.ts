import { z } from 'zod'
import { roles } from '@/lib/records/envelope'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { changeRole } from '@/lib/server/people/changes'
import { store } from '@/lib/server/people/store'

const form = z.object({ role: z.enum(roles, 'Choose one of the three roles.') })

/** Gives a person another role. Takes { role }. */
export const POST = writeRoute({ roles: ['manager'], form }, ({ role }, manager, id) =>
  changeRole(store().database, id, role, manager.id, new Date()),
)
