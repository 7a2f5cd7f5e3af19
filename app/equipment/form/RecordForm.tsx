'use client'

import type { ReactNode } from 'react'
import { Problem } from '../../ui/answers/Problem'
import { Refusal } from '../../ui/answers/Refusal'
import { Button } from '../../ui/form/Button'
import { Form as CheckedForm } from '../../ui/form/Form'
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

/** The sheet of a form that becomes one record. */
export function RecordForm<Form extends object>({ record, submit, refused, onSaved, children }: Props<Form>) {
  async function save(): Promise<boolean> {
    const id = await record.save()
    if (id !== undefined) onSaved(id)
    return id !== undefined
  }

  return (
    <CheckedForm save={save}>
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
    </CheckedForm>
  )
}
