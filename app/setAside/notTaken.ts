import { batchAnswer } from '@/lib/records/answer'
import type { About } from '../record/shown'

/** What the log did not take of what was to be admitted: the sentence for each, by record id. */
export function notTaken(posted: unknown, about: About): Map<string, string> {
  const parsed = batchAnswer.safeParse(posted)
  if (!parsed.success) return new Map()
  return new Map(
    parsed.data.answers.flatMap((answer): [string, string][] => {
      if (answer.outcome === 'refused') return [[answer.id, answer.sentence]]
      if (answer.outcome !== 'waiting for') return []
      const words = answer.ids.map((id) => about.recordAt(id)?.words ?? 'a record that is not in the log')
      return [[answer.id, `It names ${words.join(' and ')}. Admit that first.`]]
    }),
  )
}
