'use client'

import { useState } from 'react'
import { unitLabel } from '@/lib/core/pressure'
import type { Entry } from '@/lib/records/fold/entry'
import { counting } from '@/lib/records/fold/teamFile'
import type { GaugeBody } from '@/lib/records/kinds/gauge'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { usePreference } from '../device/usePreference'
import { dayOf } from '../equipment/form/today'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Button, ButtonLink } from '../ui/form/Button'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { accuracyFormOf, accuracyWords, calibrationWords, exampleWords, onItsScale } from './gaugeWords'

/** The register of the team's gauges: how far each can be trusted, and until when it is calibrated. */
export function GaugesScreen() {
  const { file } = useDeviceState()
  const preference = usePreference()
  const { add, trouble } = useAdd()
  const [today] = useState(() => dayOf(new Date()))
  const gauges = counting(file.gauges).toSorted((one, other) =>
    one.body.name.localeCompare(other.body.name, 'en', { numeric: true }),
  )
  const usual = preference.gaugeId === undefined ? undefined : file.keptId(preference.gaugeId)

  return (
    <Stack>
      <PageHeader
        title="Gauges"
        lead="The manometers of the team. A reading is worth no more than the gauge it was taken with."
        actions={<ButtonLink href="/gauges/add">Add a gauge</ButtonLink>}
      />
      <Problem>{trouble?.refusal?.sentence ?? Object.values(trouble?.fields ?? {})[0]}</Problem>
      {gauges.length === 0 && (
        <Empty
          what="No gauge is on file"
          why="Without a gauge’s accuracy no reading can be held against a rating."
          todo={<a href="/gauges/add">Add the first gauge, with its sheet in hand</a>}
        />
      )}
      {gauges.map((gauge) => (
        <GaugeSheet
          key={gauge.id}
          gauge={gauge}
          today={today}
          isUsual={gauge.id === usual}
          onUsual={() => void add([{ kind: 'preference', body: { ...preference, gaugeId: gauge.id } }])}
        />
      ))}
    </Stack>
  )
}

type SheetProps = { gauge: Entry<GaugeBody>; today: string; isUsual: boolean; onUsual: () => void }

function GaugeSheet({ gauge, today, isUsual, onUsual }: SheetProps) {
  const { body } = gauge
  return (
    <Sheet
      title={body.name}
      sub={isUsual ? 'My usual gauge' : undefined}
      foot={
        <>
          {!isUsual && <Button onClick={onUsual}>Make {body.name} my usual gauge</Button>}
          <ButtonLink kind="quiet" href={`/record?id=${gauge.id}`}>
            The record itself
          </ButtonLink>
        </>
      }
    >
      <p>{calibrationWords(body.calibrationDue, today)}</p>
      <Facts
        facts={[
          { key: 'accuracy', name: accuracyFormOf(body)?.words ?? 'Accuracy', value: accuracyWords(body) },
          { key: 'span', name: 'Full scale', value: onItsScale(body.spanPascals, body.unit) },
          { key: 'step', name: 'Smallest step', value: onItsScale(body.resolutionPascals, body.unit) },
          { key: 'unit', name: 'Displays', value: unitLabel[body.unit] },
          ...(body.note === undefined ? [] : [{ key: 'note', name: 'Note', value: body.note }]),
        ]}
      />
      {exampleWords(body).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Sheet>
  )
}
