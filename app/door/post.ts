import '@/lib/records/withoutEval'
import { z } from 'zod'
import type { Problem } from '@/lib/core/result'

const answered = z.union([
  z.object({ ok: z.literal(true), value: z.unknown() }),
  z.object({ ok: z.literal(false), problem: z.object({ code: z.string(), message: z.string() }) }),
])

export type Posted = { ok: true; value: unknown } | { ok: false; problem: Problem }

/** Sends a form that is not a record: who is at the door, who is on the team. Every failure has its sentence. */
export async function post(path: string, body: Record<string, unknown> = {}): Promise<Posted> {
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      body: JSON.stringify(body),
    })
    const parsed = answered.safeParse(await response.json())
    if (parsed.success) return parsed.data
    return trouble(`The server’s answer (${response.status}) could not be read. Try again.`)
  } catch {
    // Why it did not come through is in the browser's own words, which help nobody here.
    return trouble('The server can’t be reached. Try again when there is a signal.')
  }
}

const trouble = (message: string): Posted => ({ ok: false, problem: { code: 'no-answer', message } })
