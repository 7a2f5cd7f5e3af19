'use client'

import { useMemo } from 'react'
import { compareReading, usualReadingSettings } from '@/lib/core/reading'
import { newRecordId } from '@/lib/device/device'
import { counting } from '@/lib/records/fold/teamFile'
import type { BaselineBody } from '@/lib/records/kinds/baseline'
import { expectedAt } from '@/lib/records/view/case/expectedAt'
import { instrumentOf } from '@/lib/records/view/case/instrument'
import { ratingForComparison } from '@/lib/records/view/ratingForComparison'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { readingBodyOf } from '../../cases/readingBody'
import { freshForm, type ReadingForm, readForm } from '../../compare/readingForm'
import { whyNotYet } from '../../compare/whyNotYet'
import { useDeviceState } from '../../device/deviceContext'
import { useAdd } from '../../device/useAdd'
import { useDraft } from '../../device/useDraft'
import { usePreference } from '../../device/usePreference'
import { dayOf } from '../../equipment/form/today'
import { trimmed } from '../../equipment/form/trimmed'
import { whyNoBaseline } from './whyNoBaseline'

type BaselineForm = ReadingForm & {
  occasion: BaselineBody['occasion']
  on: string
  byTee: boolean
  note: string
}

type Options = { furnaceId: string; setpoint: Setpoint; now: string; onSaved: (baselineId: string) => void }

/** The form of a baseline at one switch: the reading with what the rating says of it, and what still stands in its way. */
export function useBaseline({ furnaceId, setpoint, now, onSaved }: Options) {
  const { file } = useDeviceState()
  const { unit, gaugeId } = usePreference()
  const { add, trouble } = useAdd()
  const { position, rating } = setpoint
  const fresh = useMemo<BaselineForm>(
    () => ({
      ...freshForm(position.body, unit, gaugeId ?? ''),
      occasion: 'annual service',
      on: dayOf(new Date(now)),
      byTee: false,
      note: '',
    }),
    [position, unit, gaugeId, now],
  )
  const draft = useDraft<BaselineForm>(`baseline ${furnaceId} ${position.id}`, fresh)
  const form = draft.value
  const gauges = useMemo(() => counting(file.gauges), [file])
  const gauge = gauges.find(({ id }) => id === form.gaugeId)
  const instrument = gauge && instrumentOf(gauge.body, form.zeroed)
  const read = readForm(form, position.body)
  const notYet = whyNotYet({ read, gauge: gauge?.body, lookedAgain: form.lookedAgain, unit })
  const reading = 'reading' in read && notYet.why.length === 0 ? read.reading : undefined
  const onFile = [rating.closes, rating.opens, rating.unstated].some(({ level }) => level !== 'Not on file')
  const compared =
    onFile && reading !== undefined && instrument !== undefined
      ? compareReading({
          reading,
          instrument,
          rating: ratingForComparison(rating, position.body),
          expected: expectedAt(file, furnaceId, reading),
          settings: { ...usualReadingSettings, now },
        })
      : undefined
  const why =
    reading === undefined
      ? notYet.why
      : whyNoBaseline({ reading, zeroed: form.zeroed, byTeeAtTheSwitch: form.byTee, compared })

  async function save(): Promise<boolean> {
    if (reading === undefined || why.length > 0) return false
    const readingId = newRecordId()
    const { occasion, on, note, byTee } = form
    const ids = await add([
      {
        id: readingId,
        kind: 'reading',
        body: readingBodyOf(form, reading, setpoint, {
          furnaceId,
          situation: 'as found',
          when: 'as found',
          byTeeAtTheSwitch: byTee,
        }),
      },
      { kind: 'baseline', body: trimmed({ furnaceId, readingId, occasion, on, note }) },
    ])
    if (ids === undefined) return false
    await draft.done()
    onSaved(ids[1]!)
    return true
  }

  return {
    form,
    draft,
    fresh,
    gauges,
    gaps: 'gaps' in read ? read.gaps : [],
    /** Only an unusual size is in the way, which a second look settles. */
    doubted: notYet.doubted,
    why,
    reading,
    instrument,
    compared,
    save,
    fields: trouble?.fields ?? {},
    refusal: trouble?.refusal?.sentence,
  }
}
