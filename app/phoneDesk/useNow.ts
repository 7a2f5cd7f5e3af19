'use client'

import { useEffect, useState } from 'react'

/** How often the desk looks at the clock, in milliseconds: a promise lapses and a reminder comes due by itself. */
const every = 20_000

/** The time, renewed while the screen is open. ISO 8601. */
export function useNow(): string {
  const [now, setNow] = useState(() => new Date().toISOString())
  useEffect(() => {
    const timer = setInterval(() => setNow(new Date().toISOString()), every)
    return () => clearInterval(timer)
  }, [])
  return now
}
