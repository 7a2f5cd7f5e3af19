'use client'

import { type FormEvent, type ReactNode, useEffect, useRef, useState } from 'react'
import { Problem } from '../../ui/answers/Problem'
import { Refusal } from '../../ui/answers/Refusal'
import { Button } from '../../ui/form/Button'
import { Sheet } from '../../ui/paper/Sheet'
import { Row, Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import type { RecordFormState } from './useRecordForm'

type Props<Form extends object> = {
  record: RecordFormState<Form>
  /** Words of the button that saves. */
  submit: string
  /** What is refused, in a sentence, and what to do instead. */
  refused: { title: string; instead: ReactNode }
  onSaved: (id: string) => void
  children: ReactNode
}

/** The sheet of a form that becomes one record. After a try that fails, the first field to put right has the focus. */
export function RecordForm<Form extends object>({ record, submit, refused, onSaved, children }: Props<Form>) {
  const form = useRef<HTMLFormElement>(null)
  const [failed, setFailed] = useState(0)
  useEffect(() => {
    if (failed > 0) focusFirstError(form.current)
  }, [failed])

  async function save(event: FormEvent) {
    event.preventDefault()
    const id = await record.save()
    if (id === undefined) setFailed((times) => times + 1)
    else onSaved(id)
  }

  return (
    <form ref={form} onSubmit={save} noValidate>
      <Sheet
        foot={
          <Button type="submit" kind="main">
            {submit}
          </Button>
        }
      >
        <Stack>
          {record.resumed && (
            <Row>
              <Quiet inline>This is what you typed here before.</Quiet>
              <Button kind="quiet" onClick={record.startAfresh}>
                Start afresh
              </Button>
            </Row>
          )}
          {children}
          {record.otherTrouble().map((sentence) => (
            <Problem key={sentence}>{sentence}</Problem>
          ))}
          {record.refusal !== undefined && (
            <Refusal
              title={refused.title}
              rule={record.refusal.rule}
              why={record.refusal.sentence}
              instead={refused.instead}
            />
          )}
        </Stack>
      </Sheet>
    </form>
  )
}

const focusFirstError = (form: HTMLFormElement | null): void =>
  form
    ?.querySelector('[role="alert"][id$="-error"]')
    ?.parentElement?.querySelector<HTMLElement>('input, select, textarea')
    ?.focus()
