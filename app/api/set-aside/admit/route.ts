import { z } from 'zod'
import { success } from '@/lib/core/result'
import { theLog } from '@/lib/server/database'
import { admit } from '@/lib/server/devices/setAside'
import { takeSetAsidePictures } from '@/lib/server/devices/setAsidePictures'
import { refuse } from '@/lib/server/http/answers'
import { writeRoute } from '@/lib/server/http/writeRoute'
import { announceNews, announcePictures } from '@/lib/server/live/live'
import { whyNotStored } from '@/lib/server/log/whyNotStored'
import { store } from '@/lib/server/people/store'
import { dropWithheldPictures } from '@/lib/server/photos/withheldPictures'

const form = z.object({
  records: z.array(z.string().max(64)).min(1, 'Choose at least one record.').max(1000),
})

/** Admits records to the log that were set aside, as their author's. Takes { records: ids }, answers { answers }. */
export const POST = writeRoute({ roles: ['manager'], form }, async ({ records }, manager) => {
  try {
    const answers = await admit(store().database, theLog(), records, manager.id, () => new Date())
    await dropWithheldPictures(answers)
    await takeSetAsidePictures(store().database, new Date())
    announcePictures()
    if (answers.some(({ outcome }) => outcome === 'stored')) announceNews()
    return success({ answers })
  } catch (cause) {
    const problem = whyNotStored(cause)
    if (problem === undefined) throw cause
    return refuse(503, problem.code, problem.message)
  }
})
