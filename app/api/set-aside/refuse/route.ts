import { z } from 'zod'
import { success } from '@/lib/core/result'
import { refuseSetAside } from '@/lib/server/devices/setAside'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { store } from '@/lib/server/people/store'

const form = z.object({
  records: z.array(z.string().max(64)).min(1, 'Choose at least one record.').max(1000),
  reason: z
    .string('Say why they stay out of the log.')
    .trim()
    .min(1, 'Say why they stay out of the log.')
    .max(500, 'Say it in 500 characters.'),
})

/** Keeps records that were set aside out of the log. Takes { records: ids, reason }. */
export const POST = writeRoute({ roles: ['manager'], form }, ({ records, reason }, manager) => {
  refuseSetAside(store().database, records, manager.id, reason, new Date())
  return success(true)
})
