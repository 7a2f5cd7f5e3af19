'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import { type SameWords, sameWordsElsewhere } from '@/lib/records/view/sameWords'
import { thePicture } from '@/lib/records/withholdable'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Refusal } from '../ui/answers/Refusal'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { bodyFacts } from './bodyFacts'
import { recordTitle } from './recordTitle'
import { fieldOf } from './recordWords'
import { useAbout } from './useAbout'
import { maybeWithheld } from './withheldFields'

const nothing: readonly string[] = []

const keyOf = ({ entry, field }: SameWords) => `also-${entry.id}-${field}`

const alsoWords = (count: number) =>
  count === 0 ? '' : `, and from ${count === 1 ? 'one other field' : `${count} other fields`}`

/** A manager takes personal data out of a record, for good. What goes is shown first; the record and its hash stay. */
export function WithholdScreen() {
  const id = useSearchParams().get('record') ?? ''
  const router = useRouter()
  const { file, me } = useDeviceState()
  const about = useAbout()
  const { add, trouble } = useAdd()
  const { value, change, done } = useDraft(`withhold ${id}`, {
    fields: nothing,
    also: nothing,
    reason: '',
    sure: false,
  })
  const [unsure, setUnsure] = useState(false)
  const found = file.records.get(id)
  const fields = found === undefined ? [] : maybeWithheld(found.kind, found.entry, me.role)
  if (found === undefined || fields.length === 0) {
    return (
      <Empty
        page
        what="There is nothing to withhold"
        why={
          found === undefined
            ? 'The record is not on this device.'
            : me.role === 'manager'
              ? 'It holds no personal data, or what it held is withheld already, or it has not been sent.'
              : 'Only a manager may withhold what somebody recorded.'
        }
        todo={<a href={found === undefined ? '/log' : `/record?id=${id}`}>Go back</a>}
      />
    )
  }
  const { kind, entry } = found
  const chosen = fields.filter((field) => value.fields.includes(field))
  const nameOf = (field: string) => fieldOf(kind, field).name
  const others = sameWordsElsewhere(file, id, chosen)
  const also = others.filter((other) => value.also.includes(keyOf(other)))
  const toggle = (field: string, on: boolean) =>
    change({ fields: fields.filter((each) => (each === field ? on : chosen.includes(each))) })

  async function withhold(): Promise<boolean> {
    setUnsure(!value.sure)
    if (!value.sure) return false
    const { reason } = value
    const alsoIds = [...new Set(also.map(({ entry }) => entry.id))]
    const ids = await add([
      { kind: 'withholding', body: { record: id, fields: [...chosen], reason } },
      ...alsoIds.map((record) => ({
        kind: 'withholding',
        body: {
          record,
          fields: also.filter(({ entry }) => entry.id === record).map(({ field }) => field),
          reason,
        },
      })),
    ])
    if (ids === undefined) return false
    await done()
    router.push(`/record?id=${id}`)
    return true
  }

  return (
    <Stack>
      <PageHeader
        title={`Withhold from: ${recordTitle(kind, entry.body)}`}
        lead="For personal data that got into a record. The record stays, with its number, its hash, and that you withheld something and why."
      />
      {trouble?.refusal !== undefined && (
        <Refusal
          title="This cannot be withheld"
          rule={trouble.refusal.rule}
          why={trouble.refusal.sentence}
          instead={<a href={`/record?id=${id}`}>Back to the record</a>}
        />
      )}
      <Form save={withhold}>
        <Sheet
          title="What shall go"
          foot={
            <Button type="submit" kind="main">
              {chosen.length === 0
                ? 'Withhold it for good'
                : `Withhold ${chosen.map((field) => `“${nameOf(field)}”`).join(', ')} for good${alsoWords(also.length)}`}
            </Button>
          }
        >
          <Stack>
            <fieldset>
              <legend>Tick what shall be blanked. This is what is there now:</legend>
              {fields.map((field) => (
                <Check
                  key={field}
                  name={field}
                  label={nameOf(field)}
                  hint={
                    field === thePicture
                      ? 'From then on it is no proof, so a rating that rests on it can fall.'
                      : bodyFacts(kind, { [field]: entry.body[field] }, about)[0]?.value
                  }
                  checked={chosen.includes(field)}
                  onChange={(event) => toggle(field, event.target.checked)}
                />
              ))}
              <Problem>{trouble?.fields.fields}</Problem>
            </fieldset>
            {others.length > 0 && (
              <fieldset>
                <legend>
                  The same words stand in other records of this. Tick those that shall go too; the others keep
                  them:
                </legend>
                {others.map((other) => (
                  <Check
                    key={keyOf(other)}
                    name={keyOf(other)}
                    label={`${fieldOf(other.kind, other.field).name}, in ${recordTitle(other.kind, other.entry.body)}`}
                    hint={
                      <>
                        {other.words} <a href={`/record?id=${other.entry.id}`}>See that record</a>
                      </>
                    }
                    checked={also.includes(other)}
                    onChange={(event) =>
                      change({
                        also: event.target.checked
                          ? [...value.also, keyOf(other)]
                          : value.also.filter((key) => key !== keyOf(other)),
                      })
                    }
                  />
                ))}
              </fieldset>
            )}
            <TextField
              label="Why?"
              name="reason"
              hint="Stays readable for everybody, so name nobody in it. For instance: the occupant asked for it."
              value={value.reason}
              onChange={(event) => change({ reason: event.target.value })}
              error={trouble?.fields.reason}
            />
            <Check
              name="sure"
              label="It can’t be undone: what is blanked is gone from the log, and from every device at its next contact."
              hint="Back-ups that were made before still hold it. Make a new one, and do away with the old ones."
              checked={value.sure}
              onChange={(event) => change({ sure: event.target.checked })}
              error={unsure && !value.sure ? 'Tick this too: nobody can bring it back.' : undefined}
            />
          </Stack>
        </Sheet>
      </Form>
    </Stack>
  )
}
