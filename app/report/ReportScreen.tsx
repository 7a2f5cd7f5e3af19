'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { newRecordId } from '@/lib/device/device'
import { counting } from '@/lib/records/fold/teamFile'
import { ratingAt, ratingSettings, type Setpoint, sisterOf } from '@/lib/records/view/setpoint'
import { useDevice, useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { usePreference } from '../device/usePreference'
import { foundFittedHref } from '../foundFitted/foundFittedAddress'
import { furnaceOf, type SetpointAddress, setpointHref, setpointQuery } from '../setpoint/setpointAddress'
import { useSetpoint } from '../setpoint/useSetpoint'
import { settlingHref, settlingWords } from '../settle/settling'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Refusal } from '../ui/answers/Refusal'
import { Button, ButtonLink } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { Beside } from '../ui/paper/Beside'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { WaterColumn } from '../ui/waterColumn/WaterColumn'
import { CheckWhatWasRead } from './CheckWhatWasRead'
import { levelOnceSaved, onceSaved } from './onceSaved'
import { listedElsewhere, partsFor } from './partsFor'
import { recordsWithPhoto } from './photoRecord'
import { BundleFields, OpenFields, SourceFields } from './ReportFields'
import { freshReport, openQuestions, type ReportForm, readText, reportBodies } from './reportForm'
import { ScannedPart } from './ScannedPart'
import { verdictsOn } from './verdicts'
import { WhatItChanges } from './WhatItChanges'
import { WhatItSays } from './WhatItSays'
import { wholeReport } from './wholeReport'

/** Records what one source says about one rating. */
export function ReportScreen() {
  const { address, setpoint, now } = useSetpoint()
  if (address === undefined || setpoint === undefined) {
    return (
      <Empty
        page
        what="A report needs its switch"
        why="A rating belongs to one switch position, and this address names none that is on this device."
        todo={<a href="/">Find the switch, then add the report from its card</a>}
      />
    )
  }
  return <ReportWith {...{ address, setpoint, now }} />
}

function ReportWith({
  address,
  setpoint,
  now,
}: {
  address: SetpointAddress
  setpoint: Setpoint
  now: string
}) {
  const query = useSearchParams()
  const requestId = query.get('request') ?? undefined
  const router = useRouter()
  const device = useDevice()
  const { file, me, names } = useDeviceState()
  const { unit } = usePreference()
  const { add, trouble } = useAdd()
  const [asked, setAsked] = useState(false)
  const { position, range } = setpoint
  const fresh = useMemo(() => freshReport(position.body), [position])
  const {
    value: form,
    change,
    done,
    restored,
    lost,
  } = useDraft<ReportForm>(`report ${setpointHref(address)} ${requestId ?? ''}`, fresh)
  const read = useMemo(() => readText(form), [form])
  const values = read.ok ? read.value : []
  const open = openQuestions(form, values, position.body.kind)
  const furnace = furnaceOf(file, address)
  const here = `/report?${setpointQuery(address)}${requestId === undefined ? '' : `&request=${requestId}`}`
  const [photoId] = useState(newRecordId)
  const bodies = reportBodies(form, values, {
    positionId: position.id,
    furnaceId: furnace.id,
    serial: furnace.serial,
    requestId,
    position: position.body,
    photoId,
  })
  const whole = read.ok && open.size === 0 ? bodies.flatMap(wholeReport) : []
  const after =
    whole.length > 0 && whole.length === bodies.length
      ? onceSaved({ bodies: whole, setpoint, file, me: me.id, now, furnace })
      : undefined
  const sister = sisterOf(file, position)
  const sisterRating = sister && ratingAt(file, sister, furnace, ratingSettings(file, now))
  const verdicts =
    after === undefined
      ? []
      : whole.flatMap((body, index) =>
          verdictsOn({
            body,
            together: whole,
            index,
            before: setpoint.rating,
            after,
            ...(sister === undefined || sisterRating === undefined
              ? {}
              : { sister: { name: sister.body.name, rating: sisterRating } }),
            unit,
          }),
        )
  const levelOf = (index: number) => (after === undefined ? 'Unverified' : levelOnceSaved(after, index))
  const typed = form.asWritten.trim() !== ''
  const fieldNames: Partial<Record<keyof ReportForm, string>> = {
    documentName: 'proof.name',
    documentPage: 'proof.page',
    documentEdition: 'proof.edition',
    organisation: 'proof.organisation',
    reference: 'proof.reference',
  }
  const errorOf = (field: keyof ReportForm): string | undefined =>
    (asked ? open.get(field) : undefined) ?? trouble?.fields[fieldNames[field] ?? field]

  async function save(): Promise<boolean> {
    setAsked(true)
    if (!read.ok || open.size > 0) return false
    const ids = await add(recordsWithPhoto(form, bodies, photoId))
    if (ids === undefined) return false
    await done()
    const saying = { id: me.id, role: me.role, saidAt: new Date().toISOString() }
    router.push(settlingHref(device.state().file, ids, saying) ?? setpointHref(address))
    return true
  }

  const part = file.parts.get(form.readOffPart)?.body
  const partOptions = partsFor(file, position, range.body.makerId)
  const people = [...names].filter(([id]) => id !== me.id).map(([value, words]) => ({ value, words }))
  const gauges = counting(file.gauges).map((gauge) => ({ value: gauge.id, words: gauge.body.name }))

  return (
    <Stack>
      <PageHeader
        above={<a href={setpointHref(address)}>Setpoint</a>}
        title="Add a report"
        lead={`What one source says about: ${position.body.name}, ${range.body.name}`}
      />
      <Problem>{lost}</Problem>
      {restored && <p role="status">What you had typed here before is still in the form.</p>}
      {trouble?.refusal !== undefined && (
        <Refusal
          title="This report cannot be added"
          rule={trouble.refusal.rule}
          why={trouble.refusal.sentence}
          instead={
            part?.class === 'general-purpose' || part?.fieldAdjustable === true ? (
              <ButtonLink
                href={foundFittedHref({
                  ...address,
                  partId: form.readOffPart,
                  printed: form.asWritten,
                })}
              >
                Record it as found fitted
              </ButtonLink>
            ) : (
              'Put it right below; what you typed is kept.'
            )
          }
        />
      )}
      <Form save={save}>
        <Stack>
          <Sheet title="What it says">
            <Stack>
              <div>
                <TextField
                  exact
                  name="asWritten"
                  label="Letter for letter, as printed, written or said"
                  hint="For instance: CLOSE .62 ±.05 WC"
                  value={form.asWritten}
                  onChange={(event) => change({ asWritten: event.target.value, confirmed: false })}
                  error={
                    typed || asked ? (read.ok ? trouble?.fields.asWritten : read.problem.message) : undefined
                  }
                />
                <CheckWhatWasRead
                  what="it"
                  value={form.asWritten}
                  read={form.asWrittenRead}
                  onChecked={() => change({ asWrittenRead: '' })}
                />
              </div>
              {read.ok && typed && (
                <Beside
                  picture={
                    <WaterColumn
                      unit={unit}
                      sense={bodies[0]?.sense ?? 'not stated'}
                      marks={bodies.map((body, index) => ({
                        ...body,
                        standing: { level: levelOf(index), asOf: now },
                        onceSaved: true,
                      }))}
                    />
                  }
                >
                  <WhatItSays answered={bodies} kind={position.body.kind} {...{ values, unit, levelOf }} />
                </Beside>
              )}
              <OpenFields {...{ form, change, errorOf }} asks={askedFields(form, open)} />
            </Stack>
          </Sheet>
          <Sheet title="Where it comes from">
            <Stack>
              <ScannedPart read={query.get('read') ?? undefined} {...{ form, change, file, here }} />
              <SourceFields
                {...{ form, change, errorOf, people, gauges }}
                parts={partOptions}
                elsewhere={listedElsewhere(file, position, part)}
              />
            </Stack>
          </Sheet>
          <Sheet
            title="What it holds for"
            foot={
              <Button type="submit" kind="main">
                Save the report
              </Button>
            }
          >
            <Stack>
              <BundleFields {...{ form, change, errorOf }} furnace={furnace} />
              {after !== undefined && (
                <WhatItChanges
                  {...{ after, setpoint, verdicts }}
                  settles={whole.flatMap((body, index) =>
                    levelOf(index) === 'In dispute' ? (settlingWords(body) ?? []) : [],
                  )}
                />
              )}
              <Problem>{unplaced(trouble?.fields ?? {})}</Problem>
            </Stack>
          </Sheet>
        </Stack>
      </Form>
    </Stack>
  )
}

/** Fields of a report that the form shows no error at: their sentences stand at its foot. */
const unplacedFields = [
  'kind',
  'limit',
  'pascals',
  'origin',
  'elevationBand',
  'revisionRange',
  'serialRange',
  'proof',
]

const unplaced = (fields: Readonly<Record<string, string>>): string | undefined =>
  Object.entries(fields)
    .filter(([path]) => unplacedFields.some((field) => path === field || path.startsWith(`${field}.`)))
    .filter(([path]) => !/^proof\.(name|page|edition|organisation|reference)$/.test(path))
    .map(([, sentence]) => sentence)
    .join(' ') || undefined

/** The questions that the text leaves open stay in sight once answered, so that the answer can be changed. */
function askedFields(form: ReportForm, open: ReadonlyMap<keyof ReportForm, string>): Set<keyof ReportForm> {
  const answered = (['unit', 'action', 'sense'] as const).filter((field) => form[field] !== '')
  return new Set([...open.keys(), ...answered, ...(form.confirmed ? (['confirmed'] as const) : [])])
}
