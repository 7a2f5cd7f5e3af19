'use client'

import { useEffect, useState } from 'react'
import { fetchHolding } from '@/lib/device/transport'

/** How often the server is asked while an answer is on its way, in milliseconds. */
const every = 5_000
/** As many records as one question may name. */
const most = 100

/** Who has a record on a device of theirs. */
export type Holding = ReadonlyMap<string, ReadonlySet<string>>

/**
 * Who has these records on their device, as the server last heard; undefined while it has not answered, or cannot. It
 * is asked again from time to time while the page is in sight. Nothing is asked for no records.
 */
export function useHolding(recordIds: readonly string[]): Holding | undefined {
  const [holding, setHolding] = useState<Holding>()
  const key = recordIds.slice(0, most).join(' ')
  useEffect(() => {
    if (key === '') return
    let gone = false
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return
      const called = await fetchHolding(key.split(' '))
      if (gone) return
      setHolding(
        called.ok ? new Map(called.value.map(({ id, personIds }) => [id, new Set(personIds)])) : undefined,
      )
    }
    void ask()
    const timer = setInterval(() => void ask(), every)
    return () => {
      gone = true
      clearInterval(timer)
    }
  }, [key])
  return holding
}
