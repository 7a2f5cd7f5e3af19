'use client'

import { useMemo } from 'react'
import { compareReading, usualReadingSettings } from '@/lib/core/reading'
import { counting } from '@/lib/records/fold/teamFile'
import { ratingForComparison } from '@/lib/records/view/ratingForComparison'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { useDraft } from '../device/useDraft'
import { usePreference } from '../device/usePreference'
import { type SetpointAddress, setpointHref } from '../setpoint/setpointAddress'
import { useSetpoint } from '../setpoint/useSetpoint'
import { Empty } from '../ui/answers/Empty'
import { Caution } from '../ui/danger/Caution'
import { Button } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { SideBySide, Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import { ReadingFields } from './ReadingFields'
import { freshForm, instrumentOf, type ReadingForm, readForm } from './readingForm'
import { Verdict } from './Verdict'
import { VerdictLine } from './VerdictLine'

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
  const start = useMemo(() => freshForm(position.body, unit, gaugeId ?? ''), [position, unit, gaugeId])
  const draft = useDraft<ReadingForm>(`compare ${setpointHref(address)}`, start)
  const form = draft.value
  const gauges = useMemo(() => counting(file.gauges), [file])
  const read = useMemo(() => readForm(form, position.body), [form, position])
  const gauge = gauges.find((each) => each.id === form.gaugeId)
  const onFile = [setpoint.rating.closes, setpoint.rating.opens, setpoint.rating.unstated].some(
    (standing) => standing.level !== 'Not on file',
  )

  const compared =
    onFile && 'reading' in read && gauge !== undefined
      ? compareReading({
          reading: read.reading,
          instrument: instrumentOf(gauge.body, form.zeroed),
          rating: ratingForComparison(setpoint.rating, position.body),
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
      <Caution />
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
                {'gaps' in read && read.gaps.map((gap) => <li key={gap.message}>{gap.message}</li>)}
                {gauge === undefined && (
                  <li>Choose the gauge: without its accuracy no reading can clear a limit.</li>
                )}
              </ul>
            </Sheet>
          )}
          {compared !== undefined && 'reading' in read && (
            <>
              {read.warnings.map((warning) => (
                <Quiet key={warning}>{warning}</Quiet>
              ))}
              <Verdict {...{ compared, reading: read.reading, setpoint, unit, names }} />
            </>
          )}
        </div>
      </SideBySide>
      {compared !== undefined && <VerdictLine compared={compared} unit={unit} />}
    </Stack>
  )
}
