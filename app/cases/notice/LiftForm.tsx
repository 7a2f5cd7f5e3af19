'use client'

import { useState } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import { lifting } from '@/lib/records/kinds/lifting'
import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { useDeviceState } from '../../device/deviceContext'
import { RecordForm } from '../../equipment/form/RecordForm'
import { dayOf } from '../../equipment/form/today'
import { useRecordForm } from '../../equipment/form/useRecordForm'
import { TextField } from '../../ui/form/TextField'
import { Sheet } from '../../ui/paper/Sheet'
import { Stack } from '../../ui/paper/Stack'

type Form = { on: string; because: string; licence: string }

/** Lifts a notice: says what was put right and who judged it. Nothing else brings a furnace out of being left off. */
export function LiftForm({ notice }: { notice: Entry<ShutDownNoticeBody> }) {
  const { file, me } = useDeviceState()
  const [fresh] = useState<Form>(() => ({ on: dayOf(new Date()), because: '', licence: '' }))
  const record = useRecordForm<Form>({
    draft: `lift ${notice.id}`,
    fresh,
    kind: 'lifting',
    read: (form) => {
      const gaps: Record<string, string> = {}
      if (form.because.trim() === '') gaps.because = 'Say what was put right, and how that was shown.'
      if (form.on === '') gaps.on = 'Give the day.'
      return Object.keys(gaps).length > 0 ? { gaps } : { body: { noticeId: notice.id, ...form } }
    },
  })
  const { form, change, errorAt } = record
  const open = caseViewOf(file, notice.body.caseId ?? '')?.dangers.open ?? []
  if (!lifting.mayAdd.includes(me.role))
    return (
      <Sheet title="Lift this notice">
        <p>
          A {me.role} may not lift a notice: whoever lifts it has judged the furnace. Ask a{' '}
          {lifting.mayAdd.join(' or a ')}.
        </p>
      </Sheet>
    )
  return (
    <section aria-labelledby="lift-title">
      <Stack>
        <h2 id="lift-title">Lift this notice</h2>
        <p>
          The furnace was to stay off until: <b>{notice.body.doNotRelightUntil}</b> Lifting it says that a
          qualified person has judged that this is so, by the maker’s instructions and local codes. Being able
          to press this is no licence.
        </p>
        {open.length > 0 ? (
          <div role="alert">
            <p>
              It cannot be lifted while these are open in its case. Record there that each is gone, then lift
              it: <a href={`/case?id=${notice.body.caseId}`}>go to the case</a>
            </p>
            <ul>
              {open.map(({ code, sentence }) => (
                <li key={code}>{sentence}</li>
              ))}
            </ul>
          </div>
        ) : (
          <RecordForm
            record={record}
            submit="Lift the notice"
            refused={{
              title: 'The notice was not lifted',
              instead: <a href={`/furnace?id=${notice.body.furnaceId}`}>Go to the furnace</a>,
            }}
            onSaved={() => {}}
          >
            <TextField
              label="What was put right"
              name="because"
              hint="And how that was shown: readings, CO, the exact factory part."
              value={form.because}
              onChange={(event) => change({ because: event.target.value })}
              error={errorAt('because')}
            />
            <TextField
              label="Licence"
              name="licence"
              hint="Of whoever judged it, where the law asks for one."
              value={form.licence}
              onChange={(event) => change({ licence: event.target.value })}
              error={errorAt('licence')}
            />
            <TextField
              type="date"
              label="On which day"
              name="on"
              value={form.on}
              onChange={(event) => change({ on: event.target.value })}
              error={errorAt('on')}
            />
          </RecordForm>
        )}
      </Stack>
    </section>
  )
}
