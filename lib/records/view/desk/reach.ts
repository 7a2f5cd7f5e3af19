import { counting, type TeamFile } from '../../fold/teamFile'
import type { AnswerSeenBody } from '../../kinds/answerSeen'
import { type Question, questionsIn } from './questions'

/** Whether the answer has reached one who asked. */
export type Reach = { personId: string } & (
  | { reached: false }
  /** When the last part of it reached them, and how; `by` is who read it out. ISO 8601. */
  | { reached: true; how: AnswerSeenBody['how'] | 'gave it'; at: string; by: string }
)

/**
 * Whom the answer of a question has reached, asker by asker. Only a record says so: it was shown on their own screen,
 * or somebody read it out to them. Whoever gave the answer knows it. An answer that came later must reach them anew.
 */
export function reachOf(file: TeamFile, { askers, answers, lead, requests }: Question): Reach[] {
  const ids = new Set([lead, ...requests].map(({ id }) => id))
  const seen = counting(file.answersSeen).filter(({ body }) => ids.has(body.requestId))
  return askers.map(({ personId }): Reach => {
    const told = answers.map((answer) => {
      if (answer.by === personId) return { how: 'gave it' as const, at: answer.at, by: personId }
      const record = seen
        .filter(
          ({ by, body }) =>
            isTold(body, by) && body.personId === personId && body.reportIds.includes(answer.id),
        )
        .toSorted((one, other) => (one.at < other.at ? -1 : 1))[0]
      return record && { how: record.body.how, at: record.at, by: record.by }
    })
    const last = told.flatMap((each) => each ?? []).toSorted((one, other) => (one.at < other.at ? 1 : -1))[0]
    return last === undefined || told.includes(undefined)
      ? { personId, reached: false }
      : { personId, reached: true, ...last }
  })
}

/** Shown on a screen counts only from that screen's own person. */
const isTold = ({ how, personId }: AnswerSeenBody, by: string): boolean =>
  how !== 'shown on the screen' || by === personId

/** The answered questions of which somebody who asked does not know the answer yet, the newest answer first. */
export const notReachedIn = (file: TeamFile): Question[] =>
  questionsIn(file)
    .filter(
      (question) => question.answers.length > 0 && reachOf(file, question).some(({ reached }) => !reached),
    )
    .toSorted((one, other) => (newestAnswer(one) < newestAnswer(other) ? 1 : -1))

const newestAnswer = ({ answers }: Question): string => answers.at(-1)?.at ?? ''

/** What a person asked for and was answered, and has not seen yet. */
export const newAnswersFor = (file: TeamFile, personId: string): Question[] =>
  notReachedIn(file).filter((question) =>
    reachOf(file, question).some((reach) => reach.personId === personId && !reach.reached),
  )
