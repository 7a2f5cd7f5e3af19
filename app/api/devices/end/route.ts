import { z } from 'zod'
import { endDevice } from '@/lib/server/devices/endings'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { store } from '@/lib/server/people/store'

const id = z.string('Say which device, and whose.').min(1, 'Say which device, and whose.').max(64)

/** Ends a person's session on a device, e.g. on a lost phone. Takes { device, personId }. */
export const POST = writeRoute(
  { roles: ['manager'], form: z.object({ device: id, personId: id }) },
  (which, manager) => endDevice(store().database, which, manager.id, new Date()),
)
