import '@/lib/records/withoutEval'
import { z } from 'zod'
import type { Result } from '@/lib/core/result'
import { failure } from '@/lib/core/result'

const verification = z.object({
  entries: z.int(),
  headHash: z.string(),
  withheld: z.array(z.object({ seq: z.int(), id: z.string(), bySeq: z.int() })),
  trouble: z.object({ seq: z.int(), sentence: z.string() }).optional(),
})

/** What the server found when it walked the log. */
export type LogVerification = z.infer<typeof verification>

const line = z.union([
  z.object({ done: z.int(), of: z.int() }),
  z.object({ ok: z.literal(true), value: verification }),
  z.object({ ok: z.literal(false), problem: z.object({ code: z.string(), message: z.string() }) }),
])

/**
 * Has the server walk the log from its first entry.
 *
 * @param progress told how many entries of how many were walked
 */
export async function verifyLog(
  progress: (done: number, of: number) => void,
  signal: AbortSignal,
): Promise<Result<LogVerification>> {
  try {
    const response = await fetch('/api/log/verify', { signal })
    const text = response.body?.pipeThrough(new TextDecoderStream()).getReader()
    let rest = ''
    for (;;) {
      const { done, value = '' } = (await text?.read()) ?? { done: true }
      rest += value
      const lines = rest.split('\n')
      rest = done ? '' : (lines.pop() ?? '')
      for (const each of lines.filter((each) => each !== '')) {
        const said = line.safeParse(JSON.parse(each))
        if (!said.success) return noAnswer(`the server’s answer (${response.status}) could not be read`)
        if ('ok' in said.data) return said.data
        progress(said.data.done, said.data.of)
      }
      if (done) return noAnswer('the answer ended too soon')
    }
  } catch (cause) {
    return noAnswer(cause instanceof Error ? cause.message : 'no answer')
  }
}

const noAnswer = (why: string) =>
  failure('no-answer', `The log could not be checked: ${why}. Try again when the server can be reached.`)
