import type { TeamFile } from '@/lib/records/fold/teamFile'
import { openQuestions, type Question } from '../desk/questions'

/** A week without an answer (common practice, no published source). */
export const oldRequestDays = 7
const dayMs = 86_400_000

/** When somebody first asked it, ISO 8601. */
export const askedAt = ({ askers, lead }: Question): string => askers[0]?.at ?? lead.at

/** Open rating requests that were asked more than a week ago, the oldest first. */
export const oldRequests = (file: TeamFile, now: string): Question[] =>
  openQuestions(file)
    .filter((question) => Date.parse(now) - Date.parse(askedAt(question)) > oldRequestDays * dayMs)
    .toSorted((a, b) => (askedAt(a) < askedAt(b) ? -1 : 1))
