'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useDeferredValue, useMemo, useState } from 'react'
import { needs } from '@/lib/records/kinds/ratingRequest'
import { nearMatches } from '@/lib/records/view/desk/nearMatches'
import { openTwin } from '@/lib/records/view/desk/questions'
import { useDeviceState } from '../device/deviceContext'
import { askedFor } from '../device/openDrafts'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { listNames } from '../phoneDesk/questionWords'
import { furnaceOf, setpointHref } from '../setpoint/setpointAddress'
import { useSetpoint } from '../setpoint/useSetpoint'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { Form } from '../ui/form/Form'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { sayAge } from '../ui/words/sayAge'
import { NearMatches } from './NearMatches'

const needWords: Record<(typeof needs)[number], string> = {
  'house cold': 'The house is cold',
  infants: 'Infants in the house',
  'elderly or ill people': 'Elderly or ill people in the house',
  'no other heat': 'No other heat',
  'furnace left off': 'The furnace is left off',
  'freezing outside': 'It is freezing outside',
}

type AskForm = {
  model: string
  serial: string
  positionName: string
  printed: string
  measured: string
  needs: (typeof needs)[number][]
  note: string
}

/**
 * Asks the team for a rating. It can be asked without a signal; the question is sent when there is one. Whoever asks
 * what somebody asks already is added to that question.
 */
export function AskScreen() {
  const query = useSearchParams()
  const router = useRouter()
  const { file, me, names } = useDeviceState()
  const { add, trouble } = useAdd()
  const { address, setpoint } = useSetpoint()
  const furnace =
    address?.furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(address.furnaceId))
  const fresh = useMemo<AskForm>(
    () => ({
      model: furnace?.body.model ?? query.get('model') ?? '',
      serial: furnace?.body.serial ?? '',
      positionName: '',
      printed: '',
      measured: '',
      needs: [],
      note: '',
    }),
    [furnace, query],
  )
  const { value: form, change, done } = useDraft<AskForm>(`ask ${askedFor(query)}`, fresh)

  const [now] = useState(() => new Date().toISOString())
  const typed = useDeferredValue(form)
  const subject = useMemo(
    () => ({
      positionId: setpoint?.position.id,
      furnaceId: furnace?.id,
      model: typed.model.trim() || undefined,
      positionName: typed.positionName.trim() || undefined,
    }),
    [setpoint, furnace, typed.model, typed.positionName],
  )
  const twin = useMemo(() => openTwin(file, subject), [file, subject])
  const near = useMemo(
    () =>
      nearMatches(file, {
        position: setpoint?.position,
        model: typed.model,
        positionName: typed.positionName,
        furnace: address === undefined ? {} : furnaceOf(file, address),
      }),
    [file, setpoint, address, typed.model, typed.positionName],
  )

  async function ask(): Promise<boolean> {
    const { positionName, ...own } = form
    // What was typed last may not be looked up yet: it is, before it is added to somebody's question.
    const joined = openTwin(file, {
      positionId: setpoint?.position.id,
      furnaceId: furnace?.id,
      model: form.model.trim() || undefined,
      positionName: positionName.trim() || undefined,
    })
    const ids = await add([
      joined === undefined
        ? {
            kind: 'rating request',
            body: { ...form, positionId: setpoint?.position.id, furnaceId: furnace?.id },
          }
        : { kind: 'asks too', body: { ...own, requestId: joined.lead.id, furnaceId: furnace?.id } },
    ])
    if (ids === undefined) return false
    await done()
    router.push(address === undefined ? '/phone-desk' : setpointHref(address))
    return true
  }

  return (
    <Stack>
      <PageHeader
        title="Ask for a rating"
        lead={
          setpoint === undefined
            ? 'Somebody at the phone will look for it. Say what you see, every character.'
            : `${setpoint.position.body.name}, ${setpoint.maker?.body.name ?? ''} ${setpoint.range.body.name}`
        }
      />
      <Form save={ask}>
        <Sheet
          foot={
            <Button type="submit" kind="main">
              {twin === undefined ? 'Ask' : 'Ask too'}
            </Button>
          }
        >
          <Stack>
            <Problem>{trouble?.refusal?.sentence}</Problem>
            <div role="status">
              {twin !== undefined && (
                <p>
                  {twin.askers.some(({ personId }) => personId === me.id)
                    ? 'You have asked this already'
                    : `${listNames(
                        twin.askers.map(({ personId }) => personId),
                        names,
                      )} asked this already`}
                  , {sayAge(twin.askers[0]?.at ?? twin.lead.at, now)}: you are added to that question, and the
                  answer reaches you too. <a href="/phone-desk">See it on the Phone desk</a>
                </p>
              )}
            </div>
            <TextField
              exact
              label="Model number, as the data plate prints it"
              name="model"
              value={form.model}
              onChange={(event) => change({ model: event.target.value })}
              error={trouble?.fields.model}
            />
            <TextField
              exact
              label="Serial number"
              name="serial"
              value={form.serial}
              onChange={(event) => change({ serial: event.target.value })}
              error={trouble?.fields.serial}
            />
            {setpoint === undefined && (
              <TextField
                label="Which switch? For instance low fire"
                name="positionName"
                value={form.positionName}
                onChange={(event) => change({ positionName: event.target.value })}
                error={trouble?.fields.positionName}
              />
            )}
            <TextField
              exact
              label="What is printed on the switch"
              name="printed"
              hint={
                twin === undefined
                  ? 'Letter for letter. Type “nothing” where nothing is printed.'
                  : 'Letter for letter, if you can read it: it helps whoever rings.'
              }
              value={form.printed}
              onChange={(event) => change({ printed: event.target.value })}
              error={trouble?.fields.printed}
            />
            <TextField
              exact
              label="What you measured, if you did"
              name="measured"
              value={form.measured}
              onChange={(event) => change({ measured: event.target.value })}
              error={trouble?.fields.measured}
            />
            <fieldset>
              <legend>Why it matters now</legend>
              {needs.map((need) => (
                <Check
                  key={need}
                  name={need}
                  label={needWords[need]}
                  checked={form.needs.includes(need)}
                  onChange={(event) =>
                    change({
                      needs: event.target.checked
                        ? [...form.needs, need]
                        : form.needs.filter((each) => each !== need),
                    })
                  }
                />
              ))}
            </fieldset>
            <TextArea
              label="Anything else"
              name="note"
              value={form.note}
              onChange={(event) => change({ note: event.target.value })}
              error={trouble?.fields.note}
            />
          </Stack>
        </Sheet>
      </Form>
      <NearMatches near={near} file={file} />
    </Stack>
  )
}
