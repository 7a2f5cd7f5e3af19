'use client'

import type { Complaint } from '@/lib/core/guard'
import { unitLabel } from '@/lib/core/pressure'
import { counting } from '@/lib/records/fold/teamFile'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../../device/deviceContext'
import { usePreference } from '../../device/usePreference'
import { RecordForm } from '../../equipment/form/RecordForm'
import { useRecordForm } from '../../equipment/form/useRecordForm'
import { Check } from '../../ui/form/Check'
import { Choice } from '../../ui/form/Choice'
import { Select } from '../../ui/form/Select'
import { TextField } from '../../ui/form/TextField'
import { type SwitchCheckForm as Form, readSwitchCheckForm } from './switchCheckForm'

type Props = {
  caseId: string
  furnaceId: string
  visitId: string
  setpoint: Setpoint
  complaint: Complaint
}

const whatFor: Record<Complaint, Form['what']> = {
  'will not close': 'off the furnace',
  'opens early': 'off the furnace',
  'wrong part fitted': 'off the furnace',
  'will not open': 'at rest',
  'drops voltage when closed': 'voltage across the closed contact',
}

/** Records what was tried on the switch itself: off the furnace, at rest, or under load. */
export function SwitchCheckForm({ caseId, furnaceId, visitId, setpoint, complaint }: Props) {
  const { file } = useDeviceState()
  const { unit, gaugeId } = usePreference()
  const positionId = setpoint.position.id
  const record = useRecordForm<Form>({
    draft: `switch check ${visitId} ${positionId} ${complaint}`,
    fresh: {
      what: whatFor[complaint],
      values: '',
      gaugeId: gaugeId ?? '',
      held: 'not checked',
      pumpLineProvenTight: false,
      inducerStopped: false,
      hoseOff: false,
      wiresOff: false,
      underLoad: false,
      terminals: 'not checked',
      contact: 'not read',
    },
    kind: 'switch check',
    read: (form) => readSwitchCheckForm(form, { caseId, furnaceId, visitId, positionId }, unit),
  })
  const { form, change, errorAt } = record
  const tick = (
    name: 'pumpLineProvenTight' | 'inducerStopped' | 'hoseOff' | 'wiresOff' | 'underLoad',
    label: string,
  ) => (
    <Check
      name={name}
      label={label}
      checked={form[name]}
      onChange={(event) => change({ [name]: event.target.checked })}
    />
  )
  return (
    <RecordForm
      record={record}
      submit="Save this check"
      refused={{ title: 'This check was not saved', instead: <a href="/cases">Back to the cases</a> }}
      onSaved={record.startAfresh}
    >
      <Choice
        legend="Which check?"
        name="switch-check"
        hint="Power off before any wire or hose comes off."
        options={[
          { value: 'off the furnace', words: 'Off the furnace, with a hand pump' },
          { value: 'at rest', words: 'At rest: is it still closed?' },
          { value: 'voltage across the closed contact', words: 'Voltage across the closed contact' },
        ]}
        value={form.what}
        onChoose={(what) => change({ what })}
      />
      {form.what === 'off the furnace' && (
        <>
          <TextField
            label={`Where it worked on each slow pull, in ${unitLabel[unit]}`}
            name="values"
            hint="Three pulls with a blank between them, for instance 0.91 0.92 0.91. Write “none” where it did not close."
            value={form.values}
            onChange={(event) => change({ values: event.target.value })}
            error={errorAt('values', 'pulls')}
          />
          <Select
            label="Gauge on the tee"
            name="gaugeId"
            value={form.gaugeId}
            onChange={(event) => change({ gaugeId: event.target.value })}
            none="Choose the gauge"
            options={counting(file.gauges).map((gauge) => ({ value: gauge.id, words: gauge.body.name }))}
            error={errorAt('gaugeId')}
          />
          <Choice
            legend="Held for ten seconds"
            name="held"
            options={[
              { value: 'held', words: 'Held' },
              { value: 'leaked down', words: 'Leaked down' },
              { value: 'not checked', words: 'Not checked' },
            ]}
            value={form.held}
            onChoose={(held) => change({ held })}
          />
          {tick('pumpLineProvenTight', 'The pump’s own line was proven tight')}
        </>
      )}
      {form.what === 'at rest' && (
        <>
          {tick('inducerStopped', 'The inducer had stopped')}
          {tick('hoseOff', 'The hose was off the switch')}
          {tick('wiresOff', 'The wires were off the switch, power off')}
        </>
      )}
      {form.what === 'voltage across the closed contact' && (
        <>
          <TextField
            label="Volts across the closed contact, each time"
            name="values"
            hint="Once and twice again, with a blank between them. Measured by voltage, never bridged."
            value={form.values}
            onChange={(event) => change({ values: event.target.value })}
            error={errorAt('values', 'volts')}
          />
          {tick('underLoad', 'Under load')}
          <Choice
            legend="Terminals"
            name="terminals"
            options={[
              { value: 'clear', words: 'Clean and tight' },
              { value: 'fault found', words: 'Fault found' },
              { value: 'not checked', words: 'Not checked' },
            ]}
            value={form.terminals}
            onChoose={(terminals) => change({ terminals })}
          />
        </>
      )}
      {form.what !== 'off the furnace' && (
        <Choice
          legend="The contact at that moment"
          name="check-contact"
          options={[
            { value: 'open', words: 'Open' },
            { value: 'closed', words: 'Closed' },
            { value: 'not read', words: 'Not read' },
          ]}
          value={form.contact}
          onChoose={(contact) => change({ contact })}
        />
      )}
    </RecordForm>
  )
}
