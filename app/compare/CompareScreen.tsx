'use client'

import { useMemo } from 'react'
import { compareReading, usualReadingSettings } from '@/lib/core/reading'
import { counting } from '@/lib/records/fold/teamFile'
import { expectedAt } from '@/lib/records/view/case/expectedAt'
import { instrumentOf } from '@/lib/records/view/case/instrument'
import { isLeftOff } from '@/lib/records/view/case/leftOff'
import { ratingForComparison } from '@/lib/records/view/ratingForComparison'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { momentWords } from '../cases/history/momentWords'
import { useDeviceState } from '../device/deviceContext'
import { useDraft } from '../device/useDraft'
import { usePreference } from '../device/usePreference'
import { UnsuitableHere } from '../foundFitted/UnsuitableHere'
import { LeftOffBanner } from '../furnace/LeftOffBanner'
import { ForWhat } from '../setpoint/ForWhat'
import { FurnaceQuestions } from '../setpoint/FurnaceQuestions'
import { type SetpointAddress, setpointHref, setpointQuery } from '../setpoint/setpointAddress'
import { useSetpoint } from '../setpoint/useSetpoint'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Caution } from '../ui/danger/Caution'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, SideBySide, Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import { ReadingFields } from './ReadingFields'
import { freshForm, type ReadingForm, readForm } from './readingForm'
import { Verdict } from './Verdict'
import { VerdictLine } from './VerdictLine'
import { whyNotYet } from './whyNotYet'

/** A reading that is compared is kept nowhere else: what comes back says when it was typed. */
type CompareForm = ReadingForm & { typedAt: string }

/** Zeroed just before is said of one reading, and not of the next that is typed here. */
const saidOfOneMoment = { zeroed: false } as const

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
  const { asks } = setpoint.rating
  const { furnaceId } = address
  const leftOff = furnaceId !== undefined && isLeftOff(file, furnaceId)
  const start = useMemo<CompareForm>(
    () => ({ ...freshForm(position.body, unit, gaugeId ?? ''), typedAt: '' }),
    [position, unit, gaugeId],
  )
  // The height may be changed on this page, and what was typed stays.
  const key = setpointHref({ positionId: address.positionId, furnaceId })
  const draft = useDraft<CompareForm>(`compare ${key}`, start, saidOfOneMoment)
  const change = (part: Partial<ReadingForm>) => draft.change({ ...part, typedAt: new Date().toISOString() })
  const startAfresh = () => {
    draft.change(start)
    void draft.done()
  }
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
    onFile && asks.length === 0 && 'reading' in read && instrument !== undefined && why.length === 0
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
      <ForWhat key={setpointQuery(address)} address={address} page="/compare" />
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
          {draft.restored && (
            <Row>
              <Quiet inline>
                This is what you typed here before
                {form.typedAt !== '' && `, ${momentWords(form.typedAt)}`}. Zero the gauge again for a new
                reading.
              </Quiet>
              <Button kind="quiet" onClick={startAfresh}>
                Start afresh
              </Button>
            </Row>
          )}
          <ReadingFields form={form} change={change} gauges={gauges} gaps={'gaps' in read ? read.gaps : []} />
          {!draft.restored && (
            <Button kind="quiet" onClick={startAfresh}>
              Start afresh
            </Button>
          )}
        </Sheet>
        <div id="verdict">
          {onFile && asks.length > 0 && (
            <Sheet title={`Needs the ${asks.join(' and the ')}`}>
              <p>The number on file depends on it, so nothing is compared yet. Look at the data plate.</p>
              <FurnaceQuestions key={setpointQuery(address)} page="/compare" {...{ asks, address }} />
            </Sheet>
          )}
          {onFile && asks.length === 0 && compared === undefined && (
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
                  onChange={(event) => change({ lookedAgain: event.target.checked })}
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
