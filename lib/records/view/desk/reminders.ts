import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import type { CallAttemptBody } from '../../kinds/callAttempt'
import { openQuestions, type Question } from './questions'

/** A call that has to be made again, for the questions of it that are still open. */
export type Reminder = {
  call: Entry<CallAttemptBody>
  questions: Question[]
  /** When to ring, ISO 8601, UTC. */
  at: string
  due: boolean
}

/**
 * The calls that somebody was asked to repeat, the next one first. Whoever has rung the same organisation since, or
 * an answer from anywhere, puts an end to it.
 * @param now ISO 8601
 */
export function remindersIn(file: TeamFile, now: string): Reminder[] {
  const open = openQuestions(file)
  return counting(file.callAttempts)
    .flatMap((call): Reminder[] => {
      const { outcome, ringBackAt, organisationId } = call.body
      if (outcome !== 'ring back' || ringBackAt === undefined) return []
      const questions = open.filter(
        ({ calls }) =>
          calls.includes(call) &&
          !calls.some((later) => later.body.organisationId === organisationId && later.at > call.at),
      )
      const at = new Date(Date.parse(ringBackAt)).toISOString()
      return questions.length === 0 ? [] : [{ call, questions, at, due: at <= now }]
    })
    .toSorted((one, other) => (one.at < other.at ? -1 : 1))
}
