'use client'

import { useEffect, useState } from 'react'
import '@/lib/records/withoutEval'
import { z } from 'zod'
import type { LogHead } from './letterParts'

const answer = z.object({ value: z.object({ seq: z.number(), hash: z.string() }) })

/** The log’s newest entry, asked of the server once; undefined while it has not answered, and where it cannot. */
export function useLogHead(): LogHead | undefined {
  const [head, setHead] = useState<LogHead>()
  useEffect(() => {
    const given = new AbortController()
    fetch('/api/log/head', { signal: given.signal })
      .then(async (response) => response.ok && setHead(answer.parse(await response.json()).value))
      .catch((cause: unknown) => {
        // Without a signal the letter says that the hash is not known here; anything else is a fault.
        if (!given.signal.aborted && !(cause instanceof TypeError)) throw cause
      })
    return () => given.abort()
  }, [])
  return head
}
