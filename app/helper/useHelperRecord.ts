'use client'

import { useEffect, useState } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { helperSteps, type Progress, type Worked } from './helperSteps'
import { workInSlices } from './workInSlices'

/** The helper's record as far as it is worked out, from the records on this device alone. */
export type HelperWork = { progress: Progress } | { worked: Worked }

/**
 * Works the helper's record out once the screen is drawn, in slices. New records begin it anew; the record worked out
 * before stays on the screen meanwhile.
 */
export function useHelperRecord(file: TeamFile): HelperWork {
  const [work, setWork] = useState<HelperWork>({ progress: { through: 0, of: 0 } })
  const [broken, setBroken] = useState<unknown>()
  useEffect(() => {
    let wanted = true
    workInSlices(
      helperSteps(file),
      (progress) => setWork((before) => ('worked' in before ? before : { progress })),
      () => wanted,
    )
      .then((worked) => worked && setWork({ worked }))
      .catch(setBroken)
    return () => {
      wanted = false
    }
  }, [file])
  // Drawn again with it, so that the page's own error screen says what went wrong.
  if (broken !== undefined) throw broken
  return work
}
