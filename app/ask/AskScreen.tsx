'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo } from 'react'
import { needs } from '@/lib/records/kinds/ratingRequest'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { setpointHref } from '../setpoint/setpointAddress'
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

const needWords: Record<(typeof needs)[number], string> = {
  'house cold': 'The house is cold',
  infants: 'Infants in the house',
  'elderly or ill people': 'Elderly or ill people in the house',
  'no other heat': 'No other heat',
  'furnace left off': 'The furnace is left off',
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

/** Asks the team for a rating. It can be asked without a signal; the question is sent when there is one. */
export function AskScreen() {
  const query = useSearchParams()
  const router = useRouter()
  const { file } = useDeviceState()
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
  const { value: form, change, done } = useDraft<AskForm>(`ask ${query.toString()}`, fresh)

  async function ask(): Promise<boolean> {
    const ids = await add([
      {
        kind: 'rating request',
        body: { ...form, positionId: setpoint?.position.id, furnaceId: furnace?.id },
      },
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
              Ask
            </Button>
          }
        >
          <Stack>
            <Problem>{trouble?.refusal?.sentence}</Problem>
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
              hint="Letter for letter. Type “nothing” where nothing is printed."
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
    </Stack>
  )
}
