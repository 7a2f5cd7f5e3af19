'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { newRecordId } from '@/lib/device/device'
import { counting } from '@/lib/records/fold/teamFile'
import { byNeed } from '@/lib/records/view/desk/need'
import { openQuestions, type Question, questionOf } from '@/lib/records/view/desk/questions'
import { useDevice, useDeviceState } from '../device/deviceContext'
import { askedFor } from '../device/openDrafts'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { useNow } from '../phoneDesk/useNow'
import { settlingHref, settlingWords } from '../settle/settling'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Refusal } from '../ui/answers/Refusal'
import { Button } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { AnswerFields } from './AnswerFields'
import { CallSheet } from './CallSheet'
import {
  type AnswerForm,
  type CallForm,
  callRecords,
  freshAnswer,
  freshCall,
  isTyped,
  rungIn,
} from './callForm'
import { OtherQuestions } from './OtherQuestions'
import { OutcomeFields } from './OutcomeFields'
import { troubleIn } from './troubleIn'
import { furnaceFor, useAnswers } from './useAnswers'
import { WhomFields } from './WhomFields'

/** One call for one or more open questions: what to say, what is answered, and what becomes of it. */
export function CallScreen() {
  const query = useSearchParams()
  const { file } = useDeviceState()
  const asked = useMemo(
    () => [...new Set(query.getAll('request').flatMap((id) => questionOf(file, id) ?? []))],
    [query, file],
  )
  if (asked.length === 0) {
    return (
      <Empty
        page
        what="A call needs its question"
        why="This address names no rating request that is on this device."
        todo={<a href="/phone-desk">Choose a question on the Phone desk</a>}
      />
    )
  }
  return <CallAbout key={query.toString()} asked={asked} query={query} />
}

type Props = { asked: readonly Question[]; query: URLSearchParams }

function CallAbout({ asked, query }: Props) {
  const router = useRouter()
  const device = useDevice()
  const { file, me } = useDeviceState()
  const { add, trouble } = useAdd()
  const now = useNow()
  const [tried, setTried] = useState(false)
  const [fresh] = useState(() => freshCall(asked, query.get('organisation') ?? ''))
  const { value: form, change, done, restored, lost } = useDraft<CallForm>(`call ${askedFor(query)}`, fresh)
  const taken = useMemo(() => form.taken.flatMap((id) => questionOf(file, id) ?? []), [form.taken, file])
  const [openedAt] = useState(now)
  const answers = useAnswers(form, taken, openedAt)
  const gaps = troubleIn(file, form, answers)
  const errorOf = (field: string) => (tried ? gaps.get(field) : undefined)
  const rung = rungIn(file, form)

  const makers = new Set(taken.flatMap(({ maker }) => maker?.id ?? []))
  const answersFor = new Set(
    (file.organisations.get(form.organisationId)?.body.makerIds ?? []).map(file.keptId),
  )
  const others = byNeed(file, openQuestions(file)).filter(
    ({ lead, maker, calls }) =>
      !asked.some((question) => question.lead.id === lead.id) &&
      ((maker !== undefined && (makers.has(maker.id) || answersFor.has(maker.id))) ||
        calls.some(({ body }) => body.organisationId === form.organisationId)),
  )

  const settles = answers.flatMap(({ bodies, levels }) =>
    bodies.flatMap((body, index) => (levels[index] === 'In dispute' ? (settlingWords(body) ?? []) : [])),
  )
  const changeAnswer = (key: string, part: Partial<AnswerForm>) => {
    const next = form.answers.map((answer) => (answer.key === key ? { ...answer, ...part } : answer))
    // The first number that is typed says what became of the call, until somebody says otherwise.
    const answered = form.outcome === '' && next.some(isTyped) ? { outcome: 'answered' as const } : {}
    change({ answers: next, ...answered })
  }
  const nextKey = () => String(1 + Math.max(0, ...form.answers.map(({ key }) => Number(key))))
  const take = (question: Question, isTaken: boolean) => {
    const { lead, position } = question
    const isMissing =
      position !== undefined && !form.answers.some(({ positionId }) => positionId === position.id)
    change(
      isTaken
        ? {
            taken: [...form.taken, lead.id],
            answers: isMissing ? [...form.answers, freshAnswer(position, nextKey())] : form.answers,
          }
        : {
            taken: form.taken.filter((id) => id !== lead.id),
            answers: form.answers.filter((answer) => answer.positionId !== position?.id || isTyped(answer)),
          },
    )
  }
  const ranges = new Set(taken.flatMap(({ range }) => range?.id ?? []))
  const positions = counting(file.positions).filter(({ body }) => ranges.has(file.keptId(body.rangeId)))

  async function save(): Promise<boolean> {
    setTried(true)
    if (gaps.size > 0) return false
    const records = callRecords(file, form, taken, newRecordId)
    const ids = await add(records)
    if (ids === undefined) return false
    await done()
    const reports = ids.filter((_, place) => records[place]?.kind === 'report')
    const saying = { id: me.id, role: me.role, saidAt: new Date().toISOString() }
    router.push(settlingHref(device.state().file, reports, saying) ?? '/phone-desk')
    return true
  }

  return (
    <Stack>
      <PageHeader
        above={<a href="/phone-desk">Phone desk</a>}
        title="Call"
        lead="Say and ask from the sheet, type while you listen, read every number back before you hang up."
      />
      <Problem>{lost}</Problem>
      {restored && <p role="status">What you had typed here before is still in the form.</p>}
      {taken.some(({ answers: given }) => given.length > 0) && (
        <p role="status">
          <b>Somebody has recorded an answer meanwhile.</b> See it before you ring:{' '}
          <a href="/phone-desk">Phone desk</a>
        </p>
      )}
      {taken.map((question) => (
        <CallSheet key={question.lead.id} question={question} now={now} />
      ))}
      <Form save={save}>
        <Stack>
          <WhomFields
            form={form}
            change={change}
            taken={taken}
            now={openedAt}
            errorOf={(field) => errorOf(field)}
          />
          <OtherQuestions others={others} taken={form.taken} onTake={take} />
          <section aria-labelledby="answers">
            <Stack>
              <h2 id="answers">What they answer</h2>
              {answers.map((state) => {
                const { key, positionId } = state.answer
                const position = file.positions.get(positionId)
                return (
                  position !== undefined && (
                    <AnswerFields
                      key={key}
                      state={state}
                      position={position}
                      furnace={furnaceFor(file, taken, positionId)}
                      rungName={rung.name}
                      now={openedAt}
                      asked={tried}
                      change={(part) => changeAnswer(key, part)}
                      remove={
                        form.answers.length < 2
                          ? undefined
                          : () => change({ answers: form.answers.filter((answer) => answer.key !== key) })
                      }
                    />
                  )
                )
              })}
              <Row>
                {positions.map((position) => (
                  <Button
                    key={position.id}
                    onClick={() => change({ answers: [...form.answers, freshAnswer(position, nextKey())] })}
                  >
                    Another number for {position.body.name}
                  </Button>
                ))}
              </Row>
            </Stack>
          </section>
          <Sheet
            title="Before you hang up"
            foot={
              <Button type="submit" kind="main">
                Save the call
              </Button>
            }
          >
            <Stack>
              <OutcomeFields form={form} change={change} errorOf={(field) => errorOf(field)} />
              <Problem>{errorOf('answers')}</Problem>
              <div role="status">
                {[...new Set(settles)].map((words) => (
                  <p key={words}>{words}</p>
                ))}
              </div>
              {trouble?.refusal !== undefined && (
                <Refusal
                  title="This call cannot be saved so"
                  rule={trouble.refusal.rule}
                  why={trouble.refusal.sentence}
                  instead="Put it right above; what you typed is kept."
                />
              )}
              <Problem>{trouble === undefined ? undefined : Object.values(trouble.fields).join(' ')}</Problem>
            </Stack>
          </Sheet>
        </Stack>
      </Form>
    </Stack>
  )
}
