import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type Question, questionsIn } from '@/lib/records/view/desk/questions'
import { questionCard, questionTitle } from '../phoneDesk/questionWords'
import { Sheet } from '../ui/paper/Sheet'
import { sayMoment } from '../ui/words/sayDate'

type Props = { furnaceId: string; file: TeamFile; names: ReadonlyMap<string, string> }

/** The ratings that somebody has asked for at this furnace, the open ones first, and what became of the others. */
export function OpenRequests({ furnaceId, file, names }: Props) {
  const asked = questionsIn(file).filter(({ furnaces }) => furnaces.some(({ id }) => id === furnaceId))
  const open = asked.filter(({ answers }) => answers.length === 0)
  const answered = asked.filter(({ answers }) => answers.length > 0).toReversed()
  if (asked.length === 0) return null
  const line = (question: Question) => {
    const { lead, askers } = question
    const answer = question.answers.at(-1)
    return (
      <li key={lead.id}>
        <a href={answer === undefined ? `/record?id=${lead.id}` : questionCard(file, question)}>
          {questionTitle(file, question)}
        </a>
        , asked by{' '}
        {askers
          .map(
            ({ personId, at }) =>
              `${names.get(personId) ?? 'somebody whose name is not on this device'}, ${sayMoment(at)}`,
          )
          .join('; ')}
        {answer !== undefined &&
          `. Answered by ${names.get(answer.by) ?? 'somebody'}, ${sayMoment(answer.at)}`}
      </li>
    )
  }
  return (
    <Sheet title="Ratings asked for here" foot={<a href="/phone-desk">See the Phone desk</a>}>
      {open.length > 0 && (
        <>
          <h3>Not answered yet</h3>
          <ul>{open.map(line)}</ul>
        </>
      )}
      {answered.length > 0 && (
        <>
          <h3>Answered</h3>
          <ul>{answered.map(line)}</ul>
        </>
      )}
    </Sheet>
  )
}
