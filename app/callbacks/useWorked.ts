'use client'

import { useEffect, useState } from 'react'
import { workInSlices } from '../helper/workInSlices'

/** How far long work is. */
export type Progress = { through: number; of: number }

export type Work<Answer> = { progress: Progress } | { worked: Answer }

/**
 * Does long work once the screen is drawn, in slices. New work begins anew; what was worked out before stays on the
 * screen meanwhile.
 * @param make keeps its identity (useCallback) as long as the work is the same
 */
export function useWorked<Answer>(make: () => Generator<Progress, Answer>): Work<Answer> {
  const [work, setWork] = useState<Work<Answer>>({ progress: { through: 0, of: 0 } })
  const [broken, setBroken] = useState<{ by: unknown }>()
  useEffect(() => {
    let wanted = true
    workInSlices(
      make(),
      (progress) => setWork((before) => ('worked' in before ? before : { progress })),
      () => wanted,
    )
      .then((worked) => worked !== undefined && setWork({ worked }))
      .catch((by) => setBroken({ by }))
    return () => {
      wanted = false
    }
  }, [make])
  // Drawn again with it, so that the page's own error screen says what went wrong.
  if (broken !== undefined) throw broken.by
  return work
}
