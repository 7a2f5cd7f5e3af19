'use client'

import { useMemo } from 'react'
import { compareReading, usualReadingSettings } from '@/lib/core/reading'
import { counting } from '@/lib/records/fold/teamFile'
import { expectedAt } from '@/lib/records/view/case/expectedAt'
import { instrumentOf } from '@/lib/records/view/case/instrument'
import { isLeftOff } from '@/lib/records/view/case/leftOff'
import { ratingForComparison } from '@/lib/records/view/ratingForComparison'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { useDraft } from '../device/useDraft'
import { usePreference } from '../device/usePreference'
import { UnsuitableHere } from '../foundFitted/UnsuitableHere'
import { LeftOffBanner } from '../furnace/LeftOffBanner'
import { type SetpointAddress, setpointHref } from '../setpoint/setpointAddress'
import { useSetpoint } from '../setpoint/useSetpoint'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Caution } from '../ui/danger/Caution'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { SideBySide, Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import { ReadingFields } from './ReadingFields'
import { freshForm, type ReadingForm, readForm } from './readingForm'
import { Verdict } from './Verdict'
import { VerdictLine } from './VerdictLine'
import { whyNotYet } from './whyNotYet'

/** Holds a manometer reading against a position's rating, live as it is typed. */
export function CompareScreen() {
  const { address, setpoint, now } = useSetpoint()
  if (address === undefined || setpoint === undefined) {
    return (
      <Empty
        page
        what="Nothing to compare with"
        why="The address names no switch position that is on this device."
        todo={<a href="/">Find the switch first</a>}
      />
    )
  }
  return <CompareWith {...{ address, setpoint, now }} />
}

function CompareWith({
  address,
  setpoint,
  now,
}: {
  address: SetpointAddress
  setpoint: Setpoint
  now: string
}) {
  const { file, names } = useDeviceState()
  const { unit, gaugeId } = usePreference()
  const { position, range } = setpoint
  const { furnaceId } = address
  const leftOff = furnaceId !== undefined && isLeftOff(file, furnaceId)
  const start = useMemo(() => freshForm(position.body, unit, gaugeId ?? ''), [position, unit, gaugeId])
  const draft = useDraft<ReadingForm>(`compare ${setpointHref(address)}`, start)
  const form = draft.value
  const gauges = useMemo(() => counting(file.gauges), [file])
  const read = useMemo(() => readForm(form, position.body), [form, position])
  const gauge = gauges.find((each) => each.id === form.gaugeId)
  const onFile = [setpoint.rating.closes, setpoint.rating.opens, setpoint.rating.unstated].some(
    (standing) => standing.level !== 'Not on file',
  )

  const instrument = gauge && instrumentOf(gauge.body, form.zeroed)
  const { why, doubted } = whyNotYet({ read, gauge: gauge?.body, lookedAgain: form.lookedAgain, unit })
  const compared =
    onFile && 'reading' in read && instrument !== undefined && why.length === 0
      ? compareReading({
          reading: read.reading,
          instrument,
          rating: ratingForComparison(setpoint.rating, position.body),
          // Only what this very furnace showed when it was healthy says what is too high for it.
          ...(furnaceId === undefined ? {} : { expected: expectedAt(file, furnaceId, read.reading) }),
          settings: { ...usualReadingSettings, now },
        })
      : undefined

  return (
    <Stack>
      <PageHeader
        above={<a href={setpointHref(address)}>Setpoint</a>}
        title="Compare a reading"
        lead={`${position.body.name}, ${range.body.name}`}
      />
      {furnaceId !== undefined && (
        <>
          <LeftOffBanner {...{ furnaceId, file, names }} />
          <UnsuitableHere {...{ furnaceId, file }} />
        </>
      )}
      <Caution />
      <Problem>{draft.lost}</Problem>
      {!onFile && (
        <Empty
          what="There is nothing to compare it with"
          why="No rating is on file for this switch, and a reading without a rating says nothing about the switch."
          todo={<a href={`/ask${setpointHref(address).slice('/setpoint'.length)}`}>Ask for this rating</a>}
        />
      )}
      <SideBySide>
        <Sheet
          title="The reading"
          sub="Teed in at the switch, furnace off while teeing in; door as in service."
        >
          <ReadingFields
            form={form}
            change={draft.change}
            gauges={gauges}
            gaps={'gaps' in read ? read.gaps : []}
          />
          <Button
            kind="quiet"
            onClick={() => {
              draft.change(start)
              void draft.done()
            }}
          >
            Start afresh
          </Button>
        </Sheet>
        <div id="verdict">
          {onFile && compared === undefined && (
            <Sheet title="No verdict yet">
              <ul>
                {why.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
              {doubted && (
                <Check
                  name="lookedAgain"
                  label="I looked again: this is what the gauge shows"
                  checked={form.lookedAgain}
                  onChange={(event) => draft.change({ lookedAgain: event.target.checked })}
                />
              )}
            </Sheet>
          )}
          {compared !== undefined && instrument !== undefined && 'reading' in read && (
            <>
              {read.warnings.map((warning) => (
                <Quiet key={warning}>{warning}</Quiet>
              ))}
              <Verdict {...{ compared, reading: read.reading, instrument, setpoint, unit, names, leftOff }} />
            </>
          )}
        </div>
      </SideBySide>
      {compared !== undefined && <VerdictLine {...{ compared, unit, leftOff }} />}
    </Stack>
  )
}
