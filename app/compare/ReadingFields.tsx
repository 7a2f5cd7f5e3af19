import { betweenWords, senseWords, stageWords, tapWords } from '@/lib/catalogue/switchKinds'
import { readingUnits } from '@/lib/catalogue/units'
import { betweens, senses, stages, taps } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import type { GaugeBody } from '@/lib/records/kinds/gauge'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { Choice } from '../ui/form/Choice'
import { NumberPad } from '../ui/form/NumberPad'
import { asOptions } from '../ui/form/option'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import { Row, Stack } from '../ui/paper/Stack'
import { type Gap, keepStart, type ReadingForm } from './readingForm'

type Props = {
  form: ReadingForm
  change: (part: Partial<ReadingForm>) => void
  gauges: readonly Entry<GaugeBody>[]
  gaps: readonly Gap[]
}

const phases = [
  { value: 'rest', words: 'At rest' },
  { value: 'pre-purge', words: 'Pre-purge' },
  { value: 'at make', words: 'At the click' },
  { value: 'after light-off', words: 'After light-off' },
  { value: 'steady hot', words: 'Hot, steady' },
] as const

const contacts = [
  { value: 'open', words: 'Open', hint: 'Full control voltage across it' },
  { value: 'closed', words: 'Closed', hint: 'No voltage across it' },
  { value: 'not read', words: 'Not read' },
] as const

/** The keypad and everything that makes a number a reading. Contacts and phase are asked before any verdict. */
export function ReadingFields({ form, change, gauges, gaps }: Props) {
  const gapOf = (field: keyof ReadingForm) => gaps.find((gap) => gap.field === field)?.message
  const typedSomething = form.typed.trim() !== '' || form.starts.length > 0
  return (
    <Stack>
      <NumberPad
        label="What the gauge shows"
        name="reading"
        value={form.typed}
        onType={(typed) => change({ typed, lookedAgain: false })}
        unit={form.unit}
        units={readingUnits}
        onUnit={(unit) => change({ unit: unit as ReadingForm['unit'], lookedAgain: false })}
        error={typedSomething ? gapOf('typed') : undefined}
      />
      <Row>
        <Button
          disabled={form.typed.trim() === '' || gapOf('typed') !== undefined}
          onClick={() => change(keepStart(form))}
        >
          Keep it, and add another start
        </Button>
      </Row>
      {form.starts.length > 0 && (
        <ul aria-label="Separate starts kept">
          {form.starts.map((start) => (
            <li key={start.key}>
              {start.text}{' '}
              <Button
                kind="quiet"
                onClick={() => change({ starts: form.starts.filter((each) => each.key !== start.key) })}
              >
                Take {start.text} out
              </Button>
            </li>
          ))}
        </ul>
      )}
      <Choice
        legend="When in the run?"
        name="phase"
        options={phases}
        value={form.phase === '' ? null : form.phase}
        onChoose={(phase) => change({ phase })}
        error={typedSomething ? gapOf('phase') : undefined}
      />
      <Choice
        legend="The contact, at that same moment"
        name="contacts"
        hint="Measured by voltage across it, never bridged."
        options={contacts}
        value={form.contacts === '' ? null : form.contacts}
        onChoose={(state) => change({ contacts: state })}
        error={typedSomething ? gapOf('contacts') : undefined}
      />
      <Select
        label="Gauge"
        name="gauge"
        value={form.gaugeId}
        onChange={(event) => change({ gaugeId: event.target.value })}
        none="Choose the gauge"
        options={gauges.map((gauge) => ({ value: gauge.id, words: gauge.body.name }))}
        hint={
          <>
            Its accuracy decides how far the number can be trusted. <a href="/gauges">Add a gauge</a>
          </>
        }
      />
      <Check
        label="Zeroed just before, both ports open to the room, hose off"
        name="zeroed"
        checked={form.zeroed}
        onChange={(event) => change({ zeroed: event.target.checked })}
      />
      <details>
        <summary>Lowest and highest, stage, points, door</summary>
        <Stack>
          <TextField
            exact
            label="Lowest seen"
            name="lowest"
            value={form.lowest}
            onChange={(event) => change({ lowest: event.target.value })}
            error={gapOf('lowest')}
            hint="From the gauge’s minimum hold. Hot, the lowest moment is what opens the switch."
          />
          <TextField
            exact
            label="Highest seen"
            name="highest"
            value={form.highest}
            onChange={(event) => change({ highest: event.target.value })}
            error={gapOf('highest')}
          />
          <TextField
            label="Seconds watched"
            name="watched"
            inputMode="numeric"
            value={form.watched}
            onChange={(event) => change({ watched: event.target.value })}
            error={gapOf('watched')}
          />
          <Check
            label="The display averages"
            name="averaging"
            checked={form.averaging}
            onChange={(event) => change({ averaging: event.target.checked })}
          />
          <Select
            label="Stage that was running"
            name="stage"
            value={form.stage}
            onChange={(event) => change({ stage: event.target.value as ReadingForm['stage'] })}
            options={asOptions(stages, stageWords)}
          />
          <Select
            label="Measured"
            name="between"
            value={form.between}
            onChange={(event) => change({ between: event.target.value as ReadingForm['between'] })}
            options={asOptions(betweens, betweenWords)}
          />
          <Select
            label="Where the hose ends"
            name="tap"
            value={form.tap}
            onChange={(event) => change({ tap: event.target.value as ReadingForm['tap'] })}
            options={asOptions(taps, tapWords)}
          />
          <Select
            label="Suction or pressure"
            name="sense"
            value={form.sense}
            onChange={(event) => change({ sense: event.target.value as ReadingForm['sense'] })}
            options={asOptions(senses, senseWords)}
            hint="A minus sign typed with the number says suction, a plus sign pressure."
          />
          <Choice
            legend="Cabinet door"
            name="door"
            options={[
              { value: 'on', words: 'On' },
              { value: 'off', words: 'Off' },
            ]}
            value={form.door}
            onChoose={(door) => change({ door })}
          />
        </Stack>
      </details>
    </Stack>
  )
}
