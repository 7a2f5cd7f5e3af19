'use client'

import { useEffect, useState } from 'react'

/**
 * Counts the times that the browser has had nothing else to do since the page was drawn, up to so many: work that can
 * wait for the first key is done one piece a turn, and what is typed meanwhile comes between. Not every browser tells;
 * there it stays 0, and whoever needs a piece makes it.
 */
export function useIdleTurns(most: number): number {
  const [turns, setTurns] = useState(0)
  useEffect(() => {
    if (typeof requestIdleCallback === 'undefined' || turns >= most) return
    const handle = requestIdleCallback(() => setTurns(turns + 1))
    return () => cancelIdleCallback(handle)
  }, [turns, most])
  return turns
}
