'use client'

import { useEffect, useRef } from 'react'
import { newAnswersFor } from '@/lib/records/view/desk/reach'
import { useDevice, useDeviceState } from '../device/deviceContext'

/**
 * Records that the answer to one's own question was seen: once its card stands on a screen that is in sight, and
 * never before.
 */
export function useAnswerSeen(positionId: string | undefined): void {
  const device = useDevice()
  const { file, me } = useDeviceState()
  const said = useRef(new Set<string>())

  useEffect(() => {
    if (positionId === undefined) return
    const say = (): void => {
      if (document.visibilityState !== 'visible') return
      const seen = newAnswersFor(file, me.id).flatMap(({ lead, answers }) => {
        const reportIds = answers
          .filter(
            ({ id, by, body }) =>
              by !== me.id && file.keptId(body.positionId) === positionId && !said.current.has(id),
          )
          .map(({ id }) => id)
        return reportIds.length === 0 ? [] : [{ requestId: lead.id, reportIds }]
      })
      if (seen.length === 0) return
      for (const { reportIds } of seen) for (const id of reportIds) said.current.add(id)
      void device.addAll(
        seen.map((each) => ({
          kind: 'answer seen',
          body: { ...each, personId: me.id, how: 'shown on the screen' },
        })),
      )
    }
    say()
    document.addEventListener('visibilitychange', say)
    return () => document.removeEventListener('visibilitychange', say)
  }, [device, file, me.id, positionId])
}
