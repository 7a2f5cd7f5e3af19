'use client'

import { type FormEvent, useMemo, useState } from 'react'
import { readingSituationIds, readingSituations } from '@/lib/catalogue/fromReadings/situations'
import { movements } from '@/lib/catalogue/fromReadings/types'
import { compareReading, usualReadingSettings, verdictWords } from '@/lib/core/reading'
import { counting } from '@/lib/records/fold/teamFile'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { expectedAt } from '@/lib/records/view/case/expectedAt'
import { instrumentOf } from '@/lib/records/view/case/instrument'
import { isLeftOff } from '@/lib/records/view/case/leftOff'
import { ratingForComparison } from '@/lib/records/view/ratingForComparison'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { ReadingFields } from '../../compare/ReadingFields'
import { freshForm, type ReadingForm, readForm } from '../../compare/readingForm'
import { Verdict } from '../../compare/Verdict'
import { whyNotYet } from '../../compare/whyNotYet'
import { useDeviceState } from '../../device/deviceContext'
import { useAdd } from '../../device/useAdd'
import { useDraft } from '../../device/useDraft'
import { usePreference } from '../../device/usePreference'
import { Problem } from '../../ui/answers/Problem'
import { Button } from '../../ui/form/Button'
import { Check } from '../../ui/form/Check'
import { Choice } from '../../ui/form/Choice'
import { Select } from '../../ui/form/Select'
import { Stack } from '../../ui/paper/Stack'
import { stopAfter } from '../../ui/words/stopAfter'
import { readingBodyOf } from '../readingBody'
import { capitalised } from './capitalised'

type Form = ReadingForm & {
  situation: ReadingBody['situation']
  when: ReadingBody['when']
  movement: ReadingBody['movement'] | ''
  byTee: boolean
}

type Props = {
  setpoint: Setpoint
  now: string
  caseId: string
  visitId: string
  furnaceId: string
  /** A repair is on record, so that the next reading is probably one after it. */
  repaired: boolean
}

/** Takes one more reading at a switch, judged as it is typed and kept with the limit it was held against. */
export function AddReading({ setpoint, now, caseId, visitId, furnaceId, repaired }: Props) {
  const { file, names } = useDeviceState()
  const { unit, gaugeId } = usePreference()
  const { add, trouble } = useAdd()
  const { position } = setpoint
  const fresh = useMemo<Form>(
    () => ({
      ...freshForm(position.body, unit, gaugeId ?? ''),
      situation: 'as found',
      when: repaired ? 'after repair' : 'as found',
      movement: '',
      byTee: false,
    }),
    [position, unit, gaugeId, repaired],
  )
  const draft = useDraft<Form>(`reading ${visitId} ${position.id}`, fresh)
  const form = draft.value
  const [tried, setTried] = useState(false)
  const [saved, setSaved] = useState('')
  const gauges = useMemo(() => counting(file.gauges), [file])
  const read = readForm(form, position.body)
  const gauge = gauges.find(({ id }) => id === form.gaugeId)
  const instrument = gauge && instrumentOf(gauge.body, form.zeroed)
  const onFile = [setpoint.rating.closes, setpoint.rating.opens, setpoint.rating.unstated].some(
    ({ level }) => level !== 'Not on file',
  )
  const expected =
    'reading' in read && form.situation === 'as found' ? expectedAt(file, furnaceId, read.reading) : undefined
  const { why, doubted } = whyNotYet({ read, gauge: gauge?.body, lookedAgain: form.lookedAgain, unit })
  const compared =
    'reading' in read && instrument !== undefined && onFile && why.length === 0
      ? compareReading({
          reading: read.reading,
          instrument,
          rating: ratingForComparison(setpoint.rating, position.body),
          ...(expected === undefined ? {} : { expected }),
          settings: { ...usualReadingSettings, now },
        })
      : undefined
  const { state, putBack } = readingSituations[form.situation]

  async function save(event: FormEvent) {
    event.preventDefault()
    setTried(true)
    setSaved('')
    if (!('reading' in read) || why.length > 0) return
    const body = readingBodyOf(form, read.reading, setpoint, {
      furnaceId,
      caseId,
      visitId,
      situation: form.situation,
      when: form.when,
      byTeeAtTheSwitch: form.byTee,
      ...(form.movement === '' ? {} : { movement: form.movement }),
    })
    if ((await add([{ kind: 'reading', body }])) === undefined) return
    const words = compared === undefined ? '' : verdictWords(compared).join('. ')
    setSaved(
      `Saved: ${body.asTyped}${stopAfter(String(body.asTyped))} ${words || 'No rating on file to hold it against'}.`,
    )
    setTried(false)
    await draft.done()
    // The next reading of this visit is most likely taken with the same gauge.
    draft.change({ ...fresh, gaugeId: form.gaugeId })
  }

  return (
    <form onSubmit={save} noValidate aria-label={`Reading at ${position.body.name}`}>
      <Stack>
        <Problem>{draft.lost}</Problem>
        <Choice
          legend="Before or after a repair"
          name="when"
          options={[
            { value: 'as found', words: 'As found' },
            { value: 'after repair', words: 'After the repair' },
          ]}
          value={form.when}
          onChoose={(when) => draft.change({ when })}
        />
        <Select
          label="What was changed for it"
          name="situation"
          value={form.situation}
          onChange={(event) => draft.change({ situation: event.target.value as Form['situation'] })}
          options={readingSituationIds.map((value) => ({ value, words: readingSituations[value].words }))}
          hint={`${state}${putBack === undefined ? '' : `. Then: ${putBack}`}`}
        />
        <ReadingFields
          form={form}
          change={draft.change}
          gauges={gauges}
          gaps={'gaps' in read ? read.gaps : []}
        />
        <Select
          label="How the display moved"
          name="movement"
          value={form.movement}
          onChange={(event) => draft.change({ movement: event.target.value as Form['movement'] })}
          none="Not watched for that"
          options={movements.map((value) => ({ value, words: capitalised(value) }))}
        />
        <Check
          name="byTee"
          label="Taken at the switch with a tee, the switch still connected"
          checked={form.byTee}
          onChange={(event) => draft.change({ byTee: event.target.checked })}
        />
        {'reading' in read &&
          !(tried && doubted) &&
          read.warnings.map((warning) => <Problem key={warning}>{warning}</Problem>)}
        {doubted && (
          <Check
            name="lookedAgain"
            label="I looked again: this is what the gauge shows"
            checked={form.lookedAgain}
            onChange={(event) => draft.change({ lookedAgain: event.target.checked })}
          />
        )}
        {compared !== undefined && instrument !== undefined && 'reading' in read && (
          <Verdict
            {...{ compared, reading: read.reading, instrument, setpoint, unit, names }}
            leftOff={isLeftOff(file, furnaceId)}
          />
        )}
        {tried && why.length > 0 && (
          <ul>
            {why.map((sentence) => (
              <li key={sentence}>
                <Problem>{sentence}</Problem>
              </li>
            ))}
          </ul>
        )}
        {saved !== '' && (
          <p role="status">
            <b>{saved}</b>
          </p>
        )}
        {trouble && <Problem>{trouble.refusal?.sentence ?? Object.values(trouble.fields).join(' ')}</Problem>}
        <Button type="submit" kind="main">
          Save this reading
        </Button>
      </Stack>
    </form>
  )
}
