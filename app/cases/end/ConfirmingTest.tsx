'use client'

import { causeById } from '@/lib/catalogue/causes'
import { Problem } from '../../ui/answers/Problem'
import { Choice } from '../../ui/form/Choice'
import { asOptions } from '../../ui/form/option'
import { Facts } from '../../ui/paper/Facts'
import { Sheet } from '../../ui/paper/Sheet'
import { Quiet } from '../../ui/words/Quiet'
import { capitalised } from '../work/capitalised'
import type { EndForm } from './endForm'
import { testWords } from './endingWords'

type Props = { form: EndForm; change: (part: Partial<EndForm>) => void; error: string | undefined }

/** The test that confirms the main cause: what to do, in which state, what to put back; and what it showed. */
export function ConfirmingTest({ form, change, error }: Props) {
  const cause = causeById(form.mainCause)
  return (
    <>
      {cause !== undefined && (
        <Sheet title="The test that confirms it" sub={cause.name}>
          <p>{cause.confirm.what}</p>
          <Facts
            facts={[
              { key: 'state', name: 'State of the furnace', value: capitalised(cause.confirm.state) },
              { key: 'minutes', name: 'Minutes', value: cause.confirm.minutes },
              {
                key: 'back',
                name: 'Put back',
                value: cause.confirm.putBack ?? 'Nothing is taken off for it.',
              },
            ]}
          />
        </Sheet>
      )}
      {form.mainCause === '' ? (
        <>
          <Quiet>Name the main cause first: the test that confirms it is shown here.</Quiet>
          <Problem>{error}</Problem>
        </>
      ) : (
        <Choice
          legend="What the test showed"
          name="confirmingTest"
          hint={
            cause === undefined
              ? 'A cause that is not on the list has a test of its own: describe it in the note.'
              : undefined
          }
          options={asOptions(['confirmed', 'not confirmed', 'not done'], testWords)}
          value={form.confirmingTest === '' ? null : form.confirmingTest}
          onChoose={(confirmingTest) => change({ confirmingTest })}
          error={error}
        />
      )}
    </>
  )
}
