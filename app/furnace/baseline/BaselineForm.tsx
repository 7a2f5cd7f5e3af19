'use client'

import { useState } from 'react'
import { baselineOccasions } from '@/lib/records/kinds/baseline'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { capitalised } from '../../cases/work/capitalised'
import { ReadingFields } from '../../compare/ReadingFields'
import { Verdict } from '../../compare/Verdict'
import { useDeviceState } from '../../device/deviceContext'
import { usePreference } from '../../device/usePreference'
import { Problem } from '../../ui/answers/Problem'
import { Button } from '../../ui/form/Button'
import { Check } from '../../ui/form/Check'
import { Choice } from '../../ui/form/Choice'
import { Form } from '../../ui/form/Form'
import { TextArea } from '../../ui/form/TextArea'
import { TextField } from '../../ui/form/TextField'
import { Sheet } from '../../ui/paper/Sheet'
import { SideBySide, Stack } from '../../ui/paper/Stack'
import { useBaseline } from './useBaseline'

type Props = { furnaceId: string; setpoint: Setpoint; now: string; onSaved: (baselineId: string) => void }

/** A reading at one switch of a healthy furnace, with what the rating says of it beside it. */
export function BaselineForm({ furnaceId, setpoint, now, onSaved }: Props) {
  const { names } = useDeviceState()
  const { unit } = usePreference()
  const baseline = useBaseline({ furnaceId, setpoint, now, onSaved })
  const [tried, setTried] = useState(false)
  const { form, draft, fresh, reading, instrument, compared, why, fields } = baseline

  function save(): Promise<boolean> {
    setTried(true)
    return baseline.save()
  }

  function startAfresh() {
    draft.change(fresh)
    setTried(false)
    void draft.done()
  }

  return (
    <Form save={save}>
      <SideBySide>
        <Sheet
          title="The reading"
          sub="Teed in at the switch, furnace off while teeing in; door as in service."
          foot={
            <Button type="submit" kind="main">
              Record the baseline
            </Button>
          }
        >
          <Stack>
            <Problem>{draft.lost}</Problem>
            <ReadingFields form={form} change={draft.change} gauges={baseline.gauges} gaps={baseline.gaps} />
            {baseline.doubted && (
              <Check
                name="lookedAgain"
                label="I looked again: this is what the gauge shows"
                checked={form.lookedAgain}
                onChange={(event) => draft.change({ lookedAgain: event.target.checked })}
              />
            )}
            <Check
              name="byTee"
              label="Taken at the switch with a tee, the switch still connected"
              checked={form.byTee}
              onChange={(event) => draft.change({ byTee: event.target.checked })}
            />
            <Choice
              legend="On which occasion?"
              name="occasion"
              options={baselineOccasions.map((value) => ({ value, words: capitalised(value) }))}
              value={form.occasion}
              onChoose={(occasion) => draft.change({ occasion })}
            />
            <TextField
              type="date"
              label="On which day"
              name="on"
              value={form.on}
              onChange={(event) => draft.change({ on: event.target.value })}
              error={fields.on}
            />
            <TextArea
              label="Note"
              name="note"
              value={form.note}
              onChange={(event) => draft.change({ note: event.target.value })}
              error={fields.note}
            />
            <Problem>{baseline.refusal}</Problem>
            <Button kind="quiet" onClick={startAfresh}>
              Start afresh
            </Button>
          </Stack>
        </Sheet>
        <Stack>
          {why.length > 0 && (
            <Sheet title="Not a baseline yet">
              <ul role={tried ? 'alert' : undefined}>
                {why.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
              {reading !== undefined && (
                <p>
                  Is something wrong with it? <a href={`/cases/new?furnace=${furnaceId}`}>Open a case</a>
                </p>
              )}
            </Sheet>
          )}
          {compared !== undefined && instrument !== undefined && reading !== undefined && (
            <Verdict {...{ compared, reading, instrument, setpoint, unit, names }} />
          )}
        </Stack>
      </SideBySide>
    </Form>
  )
}
