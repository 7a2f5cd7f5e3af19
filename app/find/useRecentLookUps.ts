'use client'

import { useCallback, useEffect, useState } from 'react'
import { useDevice } from '../device/deviceContext'
import { type LookUp, recentKey, remember } from './recentLookUps'

/** This person's recent look-ups, and a way to add one. */
export function useRecentLookUps(): { recent: readonly LookUp[]; add: (look: LookUp) => Promise<void> } {
  const device = useDevice()
  const [recent, setRecent] = useState<readonly LookUp[]>([])

  useEffect(() => {
    let gone = false
    device.readDraft(recentKey).then((kept) => {
      if (!gone && Array.isArray(kept)) setRecent(kept)
    })
    return () => {
      gone = true
    }
  }, [device])

  const add = useCallback(
    async (look: LookUp) => {
      const kept = await device.readDraft(recentKey)
      const next = remember(Array.isArray(kept) ? kept : [], look)
      await device.writeDraft(recentKey, next)
      setRecent(next)
    },
    [device],
  )
  return { recent, add }
}
