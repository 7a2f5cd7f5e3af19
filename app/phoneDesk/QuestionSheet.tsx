'use client'

import { feetOf } from '@/lib/catalogue/units'
import { needsOf } from '@/lib/records/view/desk/need'
import type { Question } from '@/lib/records/view/desk/questions'
import { UnsentQuestion } from '../ask/OwnQuestions'
import { useDeviceState } from '../device/deviceContext'
import { ButtonLink } from '../ui/form/Button'
import { type Fact, Facts } from '../ui/paper/Facts'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayMoment } from '../ui/words/sayDate'
import { callLine } from './callWords'
import { PromiseLine } from './PromiseLine'
import { questionTitle } from './questionWords'
import { answerHref, carrying } from './requestAddress'

type Props = { question: Question; now: string }

/** One rating that is waited for: who asks, why it matters now, what was tried, and what to do next. */
export function QuestionSheet({ question, now }: Props) {
  const { file, names, me } = useDeviceState()
  const { lead, position, calls } = question
  const needs = needsOf(file, question)
  return (
    <Sheet
      title={questionTitle(file, question)}
      sub={needs.length === 0 ? undefined : needs.join(' · ')}
      foot={
        <Row>
          <ButtonLink kind="main" href={`/call?request=${lead.id}`}>
            Ring about it
          </ButtonLink>
          {position === undefined ? (
            <ButtonLink
              href={carrying(`/equipment?${new URLSearchParams({ model: lead.body.model ?? '' })}`, lead)}
            >
              Add the range and switch, then the answer
            </ButtonLink>
          ) : (
            <ButtonLink href={answerHref(lead, position.id)}>Record the answer</ButtonLink>
          )}
          <ButtonLink kind="quiet" href={`/withdraw?record=${lead.id}`}>
            Withdraw the question
          </ButtonLink>
        </Row>
      }
    >
      <Stack>
        <Facts facts={factsOf(question, names)} />
        <UnsentQuestion question={question} file={file} me={me.id} />
        {calls.length > 0 && (
          <div>
            <h3>Calls so far</h3>
            <ul>
              {calls.map((call) => (
                <li key={call.id}>
                  <a href={`/record?id=${call.id}`}>{callLine(file, names, call)}</a>
                </li>
              ))}
            </ul>
          </div>
        )}
        <PromiseLine question={question} now={now} />
      </Stack>
    </Sheet>
  )
}

/** What is known of a question, once from each who asks where it differs. */
function factsOf(question: Question, names: ReadonlyMap<string, string>): Fact[] {
  const { requests, alsoAsked, askers, furnaces } = question
  const said = [...requests, ...alsoAsked].map(({ body }) => body)
  const printedOf = (key: 'model' | 'serial' | 'printed') =>
    [...new Set(said.flatMap((body) => body[key] ?? []))].map((text) => (
      <p key={text}>
        <AsPrinted text={text} />
      </p>
    ))
  const textOf = (key: 'measured' | 'note') =>
    [...new Set(said.flatMap((body) => body[key] ?? []))].map((text) => <p key={text}>{text}</p>)
  const fact = (key: string, name: string, value: Fact['value'][]): Fact[] =>
    value.length === 0 ? [] : [{ key, name, value }]
  return [
    {
      key: 'asked',
      name: 'Asked by',
      value: askers.map(({ personId, at }) => (
        <p key={personId}>
          {names.get(personId) ?? 'Somebody'}, {sayMoment(at)}
        </p>
      )),
    },
    ...fact('model', 'Model', printedOf('model')),
    ...fact('serial', 'Serial', printedOf('serial')),
    ...fact('printed', 'Printed on the switch', printedOf('printed')),
    ...fact('measured', 'Measured', textOf('measured')),
    ...fact('note', 'Note', textOf('note')),
    ...fact(
      'furnaces',
      'Furnace',
      furnaces.map(({ id, body }) => (
        <p key={id}>
          <a href={`/furnace?id=${id}`}>{body.siteLabel}</a>
          {body.elevationMetres !== undefined &&
            `, ${Math.round(feetOf(body.elevationMetres)).toLocaleString('en')} ft`}
        </p>
      )),
    ),
  ]
}
