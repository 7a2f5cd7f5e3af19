'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { Empty } from '../ui/answers/Empty'
import { Refusal } from '../ui/answers/Refusal'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { actionWords } from '../ui/words/actionWords'
import { bodyFacts } from './bodyFacts'
import { otherHalves } from './otherHalves'
import { recordTitle } from './recordTitle'
import { useAbout } from './useAbout'
import { WhatWithdrawingChanges } from './WhatWithdrawingChanges'

/** Takes a record back, with a reason. It stays readable; nothing is edited or deleted. */
export function WithdrawScreen() {
  const id = useSearchParams().get('record') ?? ''
  const router = useRouter()
  const { file } = useDeviceState()
  const about = useAbout()
  const { add, trouble } = useAdd()
  const { value, change, done } = useDraft(`withdraw ${id}`, { reason: '', othersToo: false })
  const found = file.records.get(id)
  if (found === undefined) {
    return (
      <Empty
        page
        what="There is nothing to withdraw"
        why="The record is not on this device."
        todo={<a href="/">Go to Find</a>}
      />
    )
  }
  const others = otherHalves(file, id)
  async function withdraw(): Promise<boolean> {
    const records = [id, ...(value.othersToo ? others.map((other) => other.id) : [])]
    const ids = await add(
      records.map((record) => ({ kind: 'withdrawal', body: { record, reason: value.reason } })),
    )
    if (ids === undefined) return false
    await done()
    router.push(`/record?id=${id}`)
    return true
  }
  return (
    <Stack>
      <PageHeader
        title={`Withdraw: ${recordTitle(found.kind, found.entry.body)}`}
        lead="It no longer counts from then on. Both the record and your reason stay readable."
      />
      {trouble?.refusal !== undefined && (
        <Refusal
          title="This cannot be withdrawn"
          rule={trouble.refusal.rule}
          why={trouble.refusal.sentence}
          instead={<a href={`/record?id=${id}`}>Back to the record</a>}
        />
      )}
      <Form save={withdraw}>
        <Sheet
          title="What is withdrawn"
          foot={
            <Button type="submit" kind="main">
              {value.othersToo && others.length > 0
                ? `Withdraw ${countWords(others.length + 1)}`
                : 'Withdraw it'}
            </Button>
          }
        >
          <Stack>
            <Facts facts={bodyFacts(found.kind, found.entry.body, about)} />
            <WhatWithdrawingChanges
              recordIds={[id, ...(value.othersToo ? others.map((other) => other.id) : [])]}
            />
            {others.length > 0 && (
              <div>
                <p>
                  The same text was saved as {others.length + 1} reports, one for each number.{' '}
                  {others.length === 1 ? 'The other one stands' : 'The others stand'} unless you say so:
                </p>
                <Check
                  name="othersToo"
                  label={`Withdraw with it: ${others.map(({ body }) => actionWords[body.action].name).join(', ')}`}
                  hint={others.map((other) => (
                    <a key={other.id} href={`/record?id=${other.id}`}>
                      See that report
                    </a>
                  ))}
                  checked={value.othersToo}
                  onChange={(event) => change({ othersToo: event.target.checked })}
                />
              </div>
            )}
            <TextField
              label="Why?"
              name="reason"
              hint="For instance: misread digit, other furnace, entered twice."
              value={value.reason}
              onChange={(event) => change({ reason: event.target.value })}
              error={trouble?.fields.reason}
            />
          </Stack>
        </Sheet>
      </Form>
    </Stack>
  )
}

const countWords = (count: number): string => (count === 2 ? 'both' : `all ${count}`)
